/**
 * Makes each result once, and gives the same one for an equal argument. One seed gives every property the same random cases,
 * and most of the time goes into playing them.
 *
 * Not for: a function whose results are changed by whoever gets them.
 */
export function once<Argument, Result>(make: (argument: Argument) => Result): (argument: Argument) => Result {
  const made = new Map<string, Result>();
  return (argument) => {
    const key = JSON.stringify(argument);
    const result = made.has(key) ? (made.get(key) as Result) : make(argument);
    made.set(key, result);
    return result;
  };
}
