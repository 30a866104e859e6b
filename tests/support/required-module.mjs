export const nothing = null;
