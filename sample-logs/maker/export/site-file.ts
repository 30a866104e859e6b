import { stringify } from 'yaml';
import { asWritten } from '../logging.ts';
import type {
  PointRole,
  SimulatedCircuit,
  SimulatedGroup,
  SimulatedPoint,
  SimulatedStore,
} from '../simulated-store.ts';
import { headerOf } from './cells.ts';
import type { Dialect } from './dialect.ts';

/** The site file that belongs to a store's export (contract §2), as YAML. */
export function siteFileText(store: SimulatedStore, dialect: Dialect): string {
  const without = new Set<PointRole>(dialect.without);
  const wide = dialect.layout === 'wide' || dialect.layout === 'file-a-circuit';
  const name = (point: SimulatedPoint): string => (wide ? headerOf(point, dialect) : dialect.naming(point));
  const named = (points: readonly SimulatedPoint[], role: PointRole): string[] =>
    without.has(role) ? [] : points.filter((point) => point.role === role).map(name);
  const optional = (key: string, points: readonly SimulatedPoint[], role: PointRole) => {
    const found = named(points, role)[0];
    return found === undefined ? {} : { [key]: found };
  };
  const temperature = (celsius: number): number =>
    Math.round((dialect.logging.temperature === 'degF' ? celsius * 1.8 + 32 : celsius) * 10) / 10;
  const difference = (kelvin: number): number =>
    Math.round(kelvin * (dialect.logging.temperature === 'degF' ? 1.8 : 1) * 10) / 10;

  const group = (from: SimulatedGroup) => {
    const pressure = from.points.find((point) => point.role === 'suction')!;
    const logged = named(from.points, 'suction-set-point')[0];
    return {
      id: from.id,
      class: from.class,
      ...optional('pressure', from.points, 'suction'),
      pressureSetPoint:
        logged === undefined
          ? asWritten(pressure, from.suctionSetPoint, dialect.logging, store.atmosphere)
          : { point: logged },
      compressors: named(from.points, 'compressor'),
      ...optional('discharge', from.points, 'discharge'),
      ...optional('liquidLevel', from.points, 'liquid-level'),
    };
  };
  const circuit = (from: SimulatedCircuit) => {
    const logged = named(from.others, 'set-point')[0];
    return {
      id: from.id,
      name: from.name,
      suctionGroup: from.group,
      setPoint: logged === undefined ? temperature(from.setPoint) : { point: logged },
      differential: difference(from.differential),
      controls: typeof from.controls === 'number' ? name(from.air[from.controls]!) : from.controls,
      probes: from.air.map(name),
      ...list('returnAir', named(from.others, 'return-air')),
      ...list('coilOut', named(from.others, 'coil-out')),
      ...list('defrostTermination', named(from.others, 'defrost-termination')),
      ...optional('valve', from.others, 'valve'),
      ...optional('superheat', from.others, 'superheat'),
      defrost: {
        kind: from.defrost.kind,
        ...optional('status', from.others, 'defrost'),
        perDay: from.defrost.perDay,
        minutes: from.defrost.minutes,
      },
      limits: { high: temperature(from.limits.high), minutes: from.limits.minutes },
    };
  };
  const racks = [...new Set(store.groups.map(({ rack }) => rack))];
  return stringify(
    {
      site: store.site,
      timeZone: store.timeZone,
      units: { temperature: dialect.logging.temperature, pressure: dialect.logging.pressure },
      racks: racks.map((rack) => {
        const groups = store.groups.filter((candidate) => candidate.rack === rack);
        return { id: rack, refrigerant: groups[0]!.refrigerant, suctionGroups: groups.map(group) };
      }),
      circuits: store.circuits.map(circuit),
    },
    { lineWidth: 110 },
  );
}

function list(key: string, names: readonly string[]) {
  return names.length === 0 ? {} : { [key]: names };
}
