import type { View } from '../../../taskpane/view';

export const nativeView = (view: View): View => view;
