export interface IssueMeaning {
  /** What happened, as the message begins. */
  readonly what: string;
  /** What it means for the readings, for the reference. */
  readonly meaning: string;
  readonly remedy: string;
  /** `row` and `value`: rejected ones are counted in the report; `note`: nothing was left out. */
  readonly effect: 'row' | 'value' | 'note' | 'refusal';
}
