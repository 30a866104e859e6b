/** A norm is learnt from the last quiet days, at most so many: a store changes with the season. Common practice, no source. */
export const mostDays = 28;
/** A range of a few hours needs this many days, else the same hours of all days, else the whole day stand in. */
export const fewestDaysACell = 3;
/** Fewer quiet days than this are no norm. */
export const fewestDays = 3;
/** A tie to the outdoor temperature needs so many quiet days, so wide a range, and must take off this share of the scatter. */
export const tie = { fewestDays: 10, leastRange: 4, leastGain: 0.25 } as const;
/** Beyond the range by more than this share of its width a reading is unusual, nearer it is at the edge. */
export const edgeShare = 0.5;
/** A figure is one of the end when it is known in one of the last clock blocks: of settled air there is some in most, a recovery in one a day. */
export const endBlocks = { others: 2, recovery: 8 } as const;
