import { startPage } from './start';

startPage()
  .catch((reason: unknown) => {
    console.error(reason);
    const words = document.createElement('p');
    words.setAttribute('role', 'alert');
    words.textContent = `The page could not start (${reason instanceof Error ? reason.message : String(reason)}). Load it again; a newer browser may be needed.`;
    document.getElementById('notices')?.append(words);
  })
  .finally(() => document.getElementById('main')?.removeAttribute('aria-busy'));
