import { answerQuestion } from './answerQuestion.ts';
import type { Question } from './exploreMessage.ts';

self.onmessage = ({ data }: MessageEvent<Question>) => self.postMessage(answerQuestion(data));
