// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

import { drawPane } from '../../taskpane/html/drawPane';
import type { Field, View } from '../../taskpane/view';

import { handPane, rigView } from './handPane';

// jsdom knows neither the system's theme nor a canvas; the drawing itself is tested in Chromium.
vi.mock('../../taskpane/html/drawChart', () => ({ drawChart: () => () => undefined }));

let page: HTMLElement;
let erase: () => void = () => undefined;

beforeEach(() => {
  window.matchMedia = () =>
    ({
      addEventListener: () => undefined,
      removeEventListener: () => undefined,
    }) as unknown as MediaQueryList;
  page = document.body.appendChild(document.createElement('div'));
});

afterEach(() => {
  erase();
  page.remove();
});

const draw = (view: View) => {
  const hand = handPane(view);
  erase = drawPane(page, hand.pane);
  return hand;
};

const withFields = (fields: readonly Field[], view = rigView): View => ({
  ...view,
  section: { ...view.section, blocks: [{ kind: 'fields', fields }, ...view.section.blocks.slice(2)] },
});

const labelled = <Element extends HTMLElement = HTMLInputElement>(label: string): Element => {
  const found = [...page.querySelectorAll('label')].find(({ textContent }) => textContent === label);
  const named = [...page.querySelectorAll('[aria-label]')].find(
    (one) => one.getAttribute('aria-label') === label,
  );
  const element = found === undefined ? named : document.getElementById(found.htmlFor);
  if (element === null || element === undefined) throw new Error(`No field is labelled ${label}.`);
  return element as Element;
};

const buttonNamed = (name: string): HTMLButtonElement => {
  const found = [...page.querySelectorAll('button')].find(({ textContent }) => textContent === name);
  if (found === undefined) throw new Error(`No button is named ${name}.`);
  return found;
};

const typeInto = (input: HTMLInputElement, value: string): void => {
  input.value = value;
  input.dispatchEvent(new InputEvent('input', { bubbles: true }));
};

const pressKey = (element: Element, key: string, modifiers: KeyboardEventInit = {}): KeyboardEvent => {
  const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...modifiers });
  element.dispatchEvent(event);
  return event;
};

describe('typing', () => {
  test('each key is handed on as it was typed', () => {
    const { told } = draw(rigView);
    typeInto(labelled('Barrel holds'), '6O gal?');
    expect(told).toEqual([{ kind: 'type', field: 'rig.capacity', value: '6O gal?' }]);
  });

  test('a field keeps the focus, its caret and its element when the view is drawn again around it', () => {
    const { show } = draw(rigView);
    const input = labelled('Barrel holds');
    input.focus();
    input.setSelectionRange(1, 1);
    show({
      ...rigView,
      section: {
        ...rigView.section,
        answer: 'Another answer',
        blocks: [
          { kind: 'text', text: 'A new remark stands above.', tone: 'warning' },
          ...rigView.section.blocks,
        ],
      },
    });
    expect(document.activeElement).toBe(input);
    expect(labelled('Barrel holds')).toBe(input);
    expect(input.selectionStart).toBe(1);
  });

  test('a date half typed is not wiped by a drawing that knows nothing of it', () => {
    const date: Field = { kind: 'date', id: 'round.date', label: 'Date', value: '' };
    const { show } = draw(withFields([date]));
    const input = labelled('Date');
    const setValue = vi.spyOn(input, 'value', 'set');
    show({ ...withFields([date]), message: { tone: 'good', text: 'Something else happened.' } });
    expect(setValue).not.toHaveBeenCalled();
  });

  test('a toggle says yes or nothing, a choice its value, a unit its token', () => {
    const { told } = draw(rigView);
    labelled('The wand stays open between plants').click();
    const fills = labelled<HTMLSelectElement>('Fills');
    fills.value = 'equal';
    fills.dispatchEvent(new Event('change', { bubbles: true }));
    const unit = labelled<HTMLSelectElement>('Unit of Barrel holds');
    unit.value = 'L';
    unit.dispatchEvent(new Event('change', { bubbles: true }));
    expect(told).toEqual([
      { kind: 'type', field: 'rig.open', value: '' },
      { kind: 'type', field: 'rig.style', value: 'equal' },
      { kind: 'type', field: 'rig.capacity.unit', value: 'L' },
    ]);
  });
});

describe('what is wrong', () => {
  test('the reason, the unit and the help are read out with the field', () => {
    draw(rigView);
    const read = (label: string): string =>
      (labelled(label).getAttribute('aria-describedby') ?? '')
        .split(' ')
        .map((id) => document.getElementById(id)?.textContent ?? `nothing is called ${id}`)
        .join(' | ');
    expect(read('Heel')).toBe('gal | Heel is "two"; it takes a number of gallons.');
    expect(read('Barrel holds')).toBe('To the brim.');
    expect(labelled('Heel').getAttribute('aria-invalid')).toBe('true');
    expect(labelled('Barrel holds').hasAttribute('aria-invalid')).toBe(false);
    expect(labelled('Heel').value).toBe('two');
  });

  test('after an action that did nothing the first wrong field is in focus', async () => {
    const { show } = draw({ ...rigView, message: { tone: 'warning', text: 'Heel is not a number.' } });
    buttonNamed('Keep this rig').focus();
    buttonNamed('Keep this rig').click();
    await Promise.resolve();
    await Promise.resolve();
    expect(document.activeElement).toBe(labelled('Heel'));
    show(rigView);
  });
});

describe('keys', () => {
  test('Enter in a field does the main action; in a list it does not', () => {
    const { told } = draw(rigView);
    expect(pressKey(labelled('Barrel holds'), 'Enter').defaultPrevented).toBe(true);
    expect(pressKey(labelled('Fills'), 'Enter').defaultPrevented).toBe(false);
    expect(told).toEqual([{ kind: 'press', action: 'rig.keep' }]);
  });

  test('Control and Enter do it from anywhere in the section', () => {
    const { told } = draw(rigView);
    pressKey(labelled('Fills'), 'Enter', { ctrlKey: true });
    expect(told).toEqual([{ kind: 'press', action: 'rig.keep' }]);
  });

  test('Enter that ends the composing of a letter does nothing', () => {
    const { told } = draw(rigView);
    pressKey(labelled('Barrel holds'), 'Enter', { isComposing: true });
    expect(told).toEqual([]);
  });

  test('an action that cannot be done keeps its place for the keyboard, says why and does nothing', () => {
    const { told } = draw(rigView);
    const print = buttonNamed('Print');
    print.focus();
    print.click();
    expect(document.activeElement).toBe(print);
    expect(document.getElementById(print.getAttribute('aria-describedby') ?? '')?.textContent).toBe(
      'Make the card first.',
    );
    expect(told).toEqual([]);
  });

  test('when the pressed button is gone, the keyboard goes on from the title', () => {
    const { show } = draw(rigView);
    buttonNamed('Keep this rig').focus();
    show({ ...rigView, section: { id: 'mix', title: 'Mix', answer: 'Nothing yet', blocks: [] } });
    expect(document.activeElement?.textContent).toBe('Mix');
  });
});

describe('what the page says', () => {
  test('the way tells where the user is and how each stop stands', () => {
    draw(rigView);
    const stops = [...page.querySelectorAll('nav button')].map(({ textContent }) => textContent);
    expect(stops).toEqual([
      'Garden, ready: 350 roses',
      'Rig, needs attention: no timed bucket yet',
      'Mix, nothing yet',
      'Tank what-if',
    ]);
    expect(page.querySelector('[aria-current="step"]')?.textContent).toContain('Rig');
    expect(page.querySelector('.next')?.textContent).toBe('Next: Mix. Say what goes into the barrel.');
  });

  test('a message is news in a region that was there before it', () => {
    const { show, told } = draw(rigView);
    const region = page.querySelector('.message [role="status"]');
    expect(region?.textContent).toBe('');
    show({ ...rigView, message: { tone: 'good', text: 'Kept the rig.', undo: true } });
    expect(page.querySelector('.message [role="status"]')).toBe(region);
    expect(region?.textContent).toBe('Kept the rig.');
    buttonNamed('Undo').click();
    expect(told).toEqual([{ kind: 'press', action: 'undo' }]);
  });

  test('long work shows how far it is and can be stopped', () => {
    const { told } = draw({ ...rigView, busy: { text: 'Reading the list', share: 0.25, canStop: true } });
    expect(page.querySelector('progress')?.value).toBe(0.25);
    buttonNamed('Stop').click();
    expect(told).toEqual([{ kind: 'press', action: 'stop' }]);
  });

  test('long work is told in a region that was there before it, and its bar has that name', () => {
    const { show } = draw(rigView);
    const region = page.querySelector('.busy [role="status"]');
    expect(region?.textContent).toBe('');
    expect(page.querySelector('progress')).toBeNull();
    show({ ...rigView, busy: { text: 'Reading the list', share: 0.5, canStop: false } });
    expect(page.querySelector('.busy [role="status"]')).toBe(region);
    expect(region?.getAttribute('aria-live')).toBe('polite');
    expect(region?.textContent).toBe('Reading the list');
    expect(page.querySelector('progress')?.getAttribute('aria-labelledby')).toBe(region?.id);
  });

  test('a chart says its finding and has its numbers beside it', () => {
    draw(rigView);
    expect(page.querySelector('canvas')?.getAttribute('aria-label')).toBe(
      'Round time. A 60 gal barrel takes 1 h 35 min.',
    );
    expect([...page.querySelectorAll('details.numbers td')].map(({ textContent }) => textContent)).toEqual([
      '120',
      '95',
    ]);
  });

  test('a marked row says why it is marked', () => {
    draw(rigView);
    expect(page.querySelector('tr.marked')?.textContent).toBe('2short one22 galno');
  });

  test('a folded block is opened by the pane, not by the page', () => {
    const { told, show } = draw(rigView);
    const fold = page.querySelector<HTMLDetailsElement>('details.more');
    if (fold === null) throw new Error('No fold is there.');
    expect(fold.textContent).toBe('This cell');
    fold.open = true;
    fold.dispatchEvent(new Event('toggle'));
    expect(told).toEqual([{ kind: 'fold', block: 'cell', open: true }]);
    const blocks = rigView.section.blocks.map((block) =>
      block.kind === 'more' ? { ...block, open: true } : block,
    );
    show({ ...rigView, section: { ...rigView.section, blocks } });
    fold.dispatchEvent(new Event('toggle'));
    expect(told).toHaveLength(1);
    expect(fold.textContent).toBe('This cellWorking');
  });

  test('markup in a name is shown as it is written', () => {
    const nasty = '<img src=x onerror="alert(1)"><b>Rose</b>';
    draw({
      ...rigView,
      message: { tone: 'warning', text: nasty },
      section: {
        id: nasty,
        title: nasty,
        answer: nasty,
        blocks: [
          { kind: 'fields', fields: [{ kind: 'text', id: nasty, label: nasty, value: nasty, error: nasty }] },
          {
            kind: 'table',
            table: { id: nasty, caption: nasty, columns: [{ label: nasty }], rows: [[nasty]] },
          },
        ],
      },
    });
    expect(page.querySelector('img')).toBeNull();
    expect(page.querySelector('b')).toBeNull();
    expect(page.querySelector('h2')?.textContent).toBe(nasty);
    expect(labelled(nasty).value).toBe(nasty);
    expect(document.getElementById(labelled(nasty).getAttribute('aria-describedby') ?? '')?.textContent).toBe(
      nasty,
    );
  });
});
