/** The line has no such station, or the bar no line; the sentence says what there is. */
export class NotOnLine extends RangeError {
  readonly code = 'NOT_ON_LINE';
}
