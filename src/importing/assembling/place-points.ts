import type { ImportIssue } from '../../model/import-report.ts';
import type { Point } from '../points/point.ts';
import type { SiteCircuit, SiteFile, SiteSuctionGroup } from '../site-file/site-file.ts';
import type { Place } from './meaning.ts';
import { PointIndex } from './point-index.ts';

export interface PlacedPoints {
  /** Points that the site file uses, with the place of their first use. */
  readonly places: ReadonlyMap<Point, Place>;
  readonly issues: readonly ImportIssue[];
  find(name: string): Point | null;
}

/** Looks up every point that a site file names. */
export function placePoints(points: readonly Point[], site: SiteFile): PlacedPoints {
  const index = new PointIndex(points);
  const places = new Map<Point, Place>();
  const found = new Map<string, Point | null>();
  for (const { name, place, path } of namedPoints(site)) {
    if (!found.has(name)) found.set(name, index.find(name, path));
    const point = found.get(name);
    if (point !== null && point !== undefined && !places.has(point)) places.set(point, place);
  }
  return { places, issues: index.issues, find: (name) => found.get(name) ?? null };
}

interface NamedPoint {
  readonly name: string;
  readonly place: Place;
  /** Where the site file names it, for a person: `circuit M01, probes`. */
  readonly path: string;
}

export function namedPoints(site: SiteFile): NamedPoint[] {
  return [
    ...(site.circuits ?? []).flatMap(ofCircuit),
    ...(site.racks ?? []).flatMap((rack) => (rack.suctionGroups ?? []).flatMap(ofGroup)),
  ];
}

function ofCircuit(circuit: SiteCircuit): NamedPoint[] {
  const { setPoint, defrost } = circuit;
  return [
    ...all(circuit.probes, 'temperature', 'probes'),
    ...all(circuit.returnAir, 'temperature', 'returnAir'),
    ...all(circuit.coilOut, 'temperature', 'coilOut'),
    ...all(circuit.product, 'temperature', 'product'),
    ...all(circuit.defrostTermination, 'temperature', 'defrostTermination'),
    ...one(typeof setPoint === 'object' ? setPoint.point : undefined, 'temperature', 'setPoint'),
    ...one(circuit.valve, 'valve', 'valve'),
    ...one(circuit.superheat, 'temperature-difference', 'superheat'),
    ...one(defrost?.status, 'status', 'defrost.status'),
  ].map((named) => ({ ...named, path: `circuit ${circuit.id}, ${named.path}` }));
}

function ofGroup(group: SiteSuctionGroup): NamedPoint[] {
  const { pressureSetPoint } = group;
  return [
    ...one(group.pressure, 'pressure', 'pressure'),
    ...one(
      typeof pressureSetPoint === 'object' ? pressureSetPoint.point : undefined,
      'pressure',
      'pressureSetPoint',
    ),
    ...all(group.compressors, 'status', 'compressors'),
    ...one(group.discharge, 'pressure', 'discharge'),
    ...one(group.liquidLevel, 'level', 'liquidLevel'),
    ...Object.entries(group.others ?? {}).flatMap(([name, point]) => one(point, 'any', `others.${name}`)),
  ].map((named) => ({ ...named, path: `suction group ${group.id}, ${named.path}` }));
}

function one(name: string | undefined, place: Place, path: string): NamedPoint[] {
  return name === undefined ? [] : [{ name, place, path }];
}

function all(names: readonly string[] | undefined, place: Place, path: string): NamedPoint[] {
  return (names ?? []).flatMap((name) => one(name, place, path));
}
