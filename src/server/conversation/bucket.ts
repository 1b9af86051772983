/** A token bucket: `rate` a second on the long run, `burst` at once. */
export const createBucket = (rate: number, burst: number, now: () => number) => {
  let left = burst;
  let last = now();
  return (): boolean => {
    const at = now();
    left = Math.min(burst, left + ((at - last) / 1000) * rate);
    last = at;
    if (left < 1) return false;
    left -= 1;
    return true;
  };
};
