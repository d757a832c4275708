import { serveQuestions } from '../worker/serveQuestions.ts';
import { answerQuestion } from './answerQuestion.ts';

serveQuestions(answerQuestion);
