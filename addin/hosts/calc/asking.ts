import { ComponentRefused } from './componentRefused';
import type { ComponentAnswer } from './wire/messages';
import { readAnswer, type Ask } from './wire/requests';

interface Waiting {
  readonly resolve: (value: unknown) => void;
  readonly reject: (reason: Error) => void;
}

/** The engine's own questions to the component. */
export interface Questions {
  /** Asks about one document. */
  about(doc: string): Ask;
  answered(answer: ComponentAnswer): void;
}

/** Numbers each question, so that answers may come in any order. */
export const questions = (say: (message: object) => void): Questions => {
  const waiting = new Map<number, Waiting>();
  let last = 0;
  return {
    about: (doc) => async (request) => {
      const told = new Promise<unknown>((resolve, reject) => {
        last += 1;
        waiting.set(last, { resolve, reject });
        say({ ask: last, doc, request });
      });
      return readAnswer(request.what, await told);
    },
    answered: ({ answer, value, refused, failed }) => {
      const asked = waiting.get(answer);
      waiting.delete(answer);
      if (refused !== undefined) asked?.reject(new ComponentRefused(refused));
      else if (failed === undefined) asked?.resolve(value);
      else asked?.reject(new Error(failed));
    },
  };
};
