/**
 * Saturation pressure for the simulators: Antoine curves ln p = A − B/(t + C), kPa absolute and °C, fitted to the
 * dew line between −45 and 50 °C of property tables made with an open property library; within 0.15 K of them.
 * Kept apart from the product's own tables so that a slip there cannot hide here.
 */
const antoine: Readonly<{ [refrigerant: string]: readonly [number, number, number] }> = {
  'R-448A': [14.80895, 2147.891, 250.5],
  'R-449A': [14.7714, 2138.34, 250.5],
  'R-404A': [14.57882, 2090.554, 255.5],
  'R-407A': [14.77515, 2111.232, 246.5],
  'R-507A': [14.62941, 2118.229, 258.5],
  'R-22': [14.39858, 2055.315, 251],
  'R-134a': [14.42959, 2108.912, 241],
  'R-407F': [14.83152, 2122.146, 247.5],
};

export const simulatedRefrigerants = Object.keys(antoine);

export function saturationPressure(refrigerant: string, celsius: number): number {
  const [a, b, c] = antoine[refrigerant]!;
  return Math.exp(a - b / (celsius + c));
}
