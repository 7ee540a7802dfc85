/** The set of the platform that tells whose writing an event is of. */
export const NEEDS = '1.14';

/** True for an event of the add-in's own writing. */
export const isOwn = ({ triggerSource }: Excel.WorksheetChangedEventArgs): boolean =>
  triggerSource === 'ThisLocalAddin';
