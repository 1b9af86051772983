/** Seconds a `Retry-After` of delta-seconds asks for (RFC 9110, section 10.2.3); dates are not read. */
export const retryAfter = (response: Response): number | null => {
  const text = response.headers.get('retry-after');
  return text !== null && /^\d{1,6}$/.test(text) ? Number(text) : null;
};
