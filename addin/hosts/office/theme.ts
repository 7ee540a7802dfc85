/** As much of the program's theme as is looked at. */
export interface ProgramTheme {
  readonly bodyBackgroundColor?: string;
  readonly isDarkTheme?: boolean;
}

/** Share of light, 0 to 1, below which a ground is dark (WCAG 2.2, relative luminance). */
const DARK = 0.18;

const channel = (hex: string): number => {
  const share = Number.parseInt(hex, 16) / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};

/**
 * Light or dark as the program is; undefined where it does not say, and the system's setting counts.
 *
 * @example themeOf({ bodyBackgroundColor: '#262626' }) // 'dark'
 */
export const themeOf = (theme: ProgramTheme | undefined): 'light' | 'dark' | undefined => {
  if (theme?.isDarkTheme !== undefined) return theme.isDarkTheme ? 'dark' : 'light';
  const found = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(theme?.bodyBackgroundColor ?? '');
  if (!found) return undefined;
  const [, red = '', green = '', blue = ''] = found;
  return 0.2126 * channel(red) + 0.7152 * channel(green) + 0.0722 * channel(blue) < DARK ? 'dark' : 'light';
};

/**
 * Keeps the page as light or dark as the program. It tells of no change, so it is asked whenever the pane comes into
 * sight or into use.
 */
export const followTheme = (page: HTMLElement, ask: () => ProgramTheme | undefined): void => {
  const follow = (): void => {
    const theme = themeOf(ask());
    if (theme === undefined) delete page.dataset['theme'];
    else if (page.dataset['theme'] !== theme) page.dataset['theme'] = theme;
  };
  follow();
  window.addEventListener('focus', follow);
  document.addEventListener('visibilitychange', follow);
  document.addEventListener('pointerenter', follow);
};
