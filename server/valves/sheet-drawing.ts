import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { EnergyTag } from '../../views/pictures/energy-tag.ts';
import type { ValveSection } from '../../views/pictures/valve-section.ts';

const IN_SERVICE = { shut: false } as const;
const SHUT = { shut: true } as const;

/** The valve in section as its sheet describes it: in service, half open, everything live. How it stands now is a job's to tell. */
export function sheetDrawing(sheet: ValveSheet): ValveSection {
  const isLined = (point: string | null) => (point === null ? null : IN_SERVICE);
  return {
    id: 'valve',
    sentence: `${sheet.tag} in section, in service: plug closes moving ${sheet.plugCloses}, air moves the stem ${sheet.airMovesStem}, ${sheet.airAction.replaceAll('-', ' ')}, flow ${sheet.flow} the plug.`,
    plugCloses: sheet.plugCloses,
    airMovesStem: sheet.airMovesStem,
    flow: sheet.flow,
    actuatorKind: sheet.actuatorKind,
    springHeldBy: sheet.springHeldBy,
    device: deviceOf(sheet),
    positioner: sheet.positioner !== 'none',
    openFraction: 0.5,
    supply: 'live',
    signal: 'live',
    spring: sheet.springHeldBy === 'no spring' ? 'absent' : 'loaded',
    inlet: 'live',
    outlet: 'live',
    signalLine: 'joined',
    supplyCock: IN_SERVICE,
    inletCock: isLined(sheet.inletPoint),
    outletCock: isLined(sheet.outletPoint),
    inletDrain: sheet.inletPoint === null ? null : SHUT,
    outletDrain: sheet.outletPoint === null ? null : SHUT,
    bypass: sheet.bypassPoint === null ? null : SHUT,
    tags: tagsOf(sheet),
    words: { open: '100 open', shut: '0 shut', travel: 'travel', travelValue: '50 %' },
  };
}

/** Letters of the box on the line that drives the actuator. @example deviceOf(sheet) // 'POS' where one is fitted */
export function deviceOf({ positioner }: Pick<ValveSheet, 'positioner'>): string {
  return positioner === 'none' ? 'I/P' : 'POS';
}

/** Where each energy is locked off; nothing is said of how it stands. */
function tagsOf(sheet: ValveSheet): readonly EnergyTag[] {
  const at = (point: string | null) => (point === null ? 'no block valve' : `lock at ${point}`);
  const tags: readonly EnergyTag[] = [
    { letter: 'A', name: 'Supply air', state: 'live', proof: at(sheet.supplyPoint) },
    { letter: 'D', name: 'Process, inlet side', state: 'live', proof: at(sheet.inletPoint) },
    { letter: 'E', name: 'Process, outlet side', state: 'live', proof: at(sheet.outletPoint) },
  ];
  const bypass: readonly EnergyTag[] =
    sheet.bypassPoint === null
      ? []
      : [{ letter: 'F', name: `Bypass ${sheet.bypassPoint}`, state: 'shut', proof: 'never an isolation' }];
  return [...tags, ...bypass];
}
