/**
 * The sets of the platform that the add-in declares: a program without them does not offer it. Whatever a later set
 * brings is asked for at run time first.
 */
export const BASELINE = {
  SharedRuntime: '1.1',
  CustomFunctionsRuntime: '1.3',
  ExcelApi: '1.13',
  DialogApi: '1.1',
  Settings: '1.1',
} as const;
