import { expect, test } from 'vitest';
import { withRackSigns } from '../../../src/importing/naming/rack-signs.ts';
import { withRackColumns } from '../../../src/importing/naming/reclassify.ts';
import { nameColumns } from '../../../src/importing/naming/role.ts';
import { collectPoints } from '../../../src/importing/points/collect-points.ts';
import type { ColumnSpec } from '../assemble/readings-of.ts';
import { dialects } from './dialects.ts';
import { exported } from './invented-store.ts';
import { readingsIn } from './truth.ts';

/** Names that taught the importer something, and what each is: a unit, a state or a bare number, beside a plain store. */

const terse = exported(dialects[0]!);
const valuesOf = (what: string) => terse.find(({ part }) => part.what === what)!.values;
const pressure = valuesOf('suction').map((_, row) => 3 + Math.sin(row / 9) / 4);
const share = pressure.map((value) => Math.round(value * 15));

const columns = {
  '°C': { values: valuesOf('air'), unit: 'degC' as const },
  barg: { values: pressure, unit: 'barg' as const },
  '%': { values: share, unit: 'percent' as const },
  'on/off': { values: valuesOf('defrost'), status: true },
  number: { values: valuesOf('air') },
};

test.each<[string, keyof typeof columns, string]>([
  ['C01 Leaving Air Temp', '°C', 'air'],
  ['C01 Entering Air Temp', '°C', 'return-air'],
  ['C01 Temp OffCoil', '°C', 'air'],
  ['C01 Temp OnCoil', '°C', 'return-air'],
  ['C01 Coil Leaving Temp', '°C', 'coil-out'],
  ['C01 refrigerant leaving coil', '°C', 'coil-out'],
  ['C01 Suction Line Temp', '°C', 'coil-out'],
  ['C01 T° air soufflé', '°C', 'air'],
  ['C01 T° air repris', '°C', 'return-air'],
  ['C01 T-Abluft', '°C', 'return-air'],
  ['C01 Ar Insuflação', '°C', 'air'],
  ['C01 temperature wanted', '°C', 'set-point'],
  ['C01 thermostat setting', '°C', 'set-point'],
  ['C01 instelwaarde', '°C', 'set-point'],
  ['C01 DTT', '°C', 'defrost-termination'],
  ['C01 Abtauende-Fühler', '°C', 'defrost-termination'],
  ['C01 UeH', '°C', 'superheat'],
  ['C01 Super Heat', '°C', 'superheat'],
  ['C01 Sobreaquecimento', '°C', 'superheat'],
  ['C01 Tsat', '°C', 'other'],
  ['C01 T.evap.sat', '°C', 'other'],
  ['C01 High Temp Alarm Setpoint', '°C', 'other'],
  ['C01 DF', 'on/off', 'defrost'],
  ['C01 Defrost Heater', 'on/off', 'defrost'],
  ['C01 Anti-Sweat Heater', 'on/off', 'other'],
  ['C01 descongelação', 'on/off', 'defrost'],
  ['C01 LS', 'on/off', 'valve'],
  ['C01 Liq Line', 'on/off', 'valve'],
  ['C01 koelvraag', 'on/off', 'valve'],
  ['C01 solenoid coil', 'on/off', 'valve'],
  ['C01 FN', 'on/off', 'other'],
  ['R1 SUC PR', 'barg', 'suction-pressure'],
  ['R1 SucP', 'barg', 'suction-pressure'],
  ['R1 low side pressure', 'barg', 'suction-pressure'],
  ['R1 Presion Baja', 'barg', 'suction-pressure'],
  ['R1 Disc Press', 'barg', 'discharge-pressure'],
  ['R1 Druckgas', 'barg', 'discharge-pressure'],
  ['R1 P condensazione', 'barg', 'discharge-pressure'],
  ['R1 Rack Gas Cooler Pressure', 'barg', 'discharge-pressure'],
  ['R1-C9', 'on/off', 'compressor'],
  ['OA Temp', '°C', 'outdoor'],
])('%s, in %s, is %s', (point, kind, role) => {
  const extra: ColumnSpec = { point, ...columns[kind] };
  const parts = [...terse, { ...extra, part: { what: 'indoor' as const } }];
  const read = withRackColumns(withRackSigns(nameColumns(collectPoints(readingsIn(parts)).points)));
  expect(read.find((column) => column.point.name === point)?.role).toBe(role);
});
