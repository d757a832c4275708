import type { AskedQuestion, WorkerWord } from './AskedWorker.ts';

/**
 * Answers the questions that an `AskedWorker` puts; called once, in the worker.
 * @param answerTo may throw: the maker reads the message
 * @param handedOver buffers of an answer that are transferred, not copied
 */
export function serveQuestions<Q, A>(
  answerTo: (question: Q) => A | Promise<A>,
  handedOver: (answer: A) => Transferable[] = () => [],
): void {
  const say = (word: WorkerWord<A>, transfer: Transferable[] = []): void => self.postMessage(word, { transfer });
  self.onmessage = async ({ data: { number: to, question } }: MessageEvent<AskedQuestion<Q>>) => {
    say({ to, heard: true });
    try {
      const answer = await answerTo(question);
      say({ to, answer }, handedOver(answer));
    } catch (error) {
      say({ to, failure: error instanceof Error ? error.message : String(error) });
    }
  };
}
