import { serveQuestions } from '../state/serveQuestions.ts';
import { answerQuestion } from './answerQuestion.ts';

serveQuestions(answerQuestion);
