/** Values read of a long column, spread over it; of a column with few readings all that there are. */
const fewest = 200;

/** Up to about `most` of the finite values of a column, spread evenly over it, in their order. */
export function spreadSample(values: Float64Array, most: number): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / most));
  const sample = everyNth(values, stride);
  return sample.length < fewest && stride > 1 ? everyNth(values, 1).subarray(0, most) : sample;
}

function everyNth(values: Float64Array, stride: number): Float64Array {
  const sample = new Float64Array(Math.ceil(values.length / stride));
  let count = 0;
  for (let index = 0; index < values.length; index += stride) {
    if (Number.isFinite(values[index]!)) sample[count++] = values[index]!;
  }
  return sample.subarray(0, count);
}
