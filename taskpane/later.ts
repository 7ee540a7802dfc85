/**
 * Tells once what happens often: each time anew, the telling waits for so long.
 *
 * @param pause ms
 */
export const later = (tell: () => void, pause: number): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(tell, pause);
  };
};
