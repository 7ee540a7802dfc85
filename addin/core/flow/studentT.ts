/**
 * Chance that Student's t lies between −t and t.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.3 and 26.7.4 (from memory): a finite
 * sum, exact for whole degrees of freedom.
 *
 * @param t ≥ 0
 * @param freedom whole degrees of freedom, ≥ 1
 * @returns 0 to 1
 * @example chanceWithin(1, 1) // 0.5
 */
export const chanceWithin = (t: number, freedom: number): number => {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const odd = freedom % 2 === 1;
  let term = odd ? cosine : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
};

/**
 * Two-sided Student's t: how many standard errors the mean of few readings may be off.
 *
 * Source: `chanceWithin`, turned round by bisection.
 *
 * @param confidence between 0 and 1, such as 0.95
 * @param freedom whole degrees of freedom, ≥ 1: readings − 1
 * @example studentT(0.95, 2) // 4.3027
 */
export const studentT = (confidence: number, freedom: number): number => {
  let [low, high] = [0, 1];
  while (chanceWithin(high, freedom) < confidence) high *= 2;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (chanceWithin(middle, freedom) < confidence) low = middle;
    else high = middle;
  }
};
