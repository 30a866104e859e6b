import { ewma } from './ewma.ts';

/**
 * What a body with one time constant shows of `values`: τ·dy/dt = x − y with x held over each step, so
 * y = y + (1 − e^(−step/τ)) · (x − y). Both times in the same unit; a time constant of 0 copies. Missing values
 * give NaN and leave the state as it was.
 */
export function onePoleLag(values: ArrayLike<number>, step: number, timeConstant: number): Float64Array {
  return ewma(values, timeConstant > 0 ? -Math.expm1(-step / timeConstant) : 1);
}
