/** The grid's class of arrays, as far as it is mended here. */
interface ArrayClass {
  readonly prototype: {
    getArrayValue(): unknown[];
    setArrayValue(rows: never): void;
    toValue(): unknown;
  };
}

/**
 * Lets the grid hand rows of a sheet that is not there over to a FEED function. It gives such an array its first row
 * only, and throws where it looks for the others, which would stop every formula until the page is loaded again.
 */
export const fillMissingRows = ({ prototype }: ArrayClass): void => {
  const toValue = prototype.toValue;
  prototype.toValue = function (this: ArrayClass['prototype']) {
    const rows = this.getArrayValue();
    const [first] = rows;
    if (first !== undefined) this.setArrayValue(Array.from(rows, (row) => row ?? first) as never);
    return toValue.call(this);
  };
};
