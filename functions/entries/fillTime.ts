import { fillTime, toCanonical } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, unit } from '../parameters';
import { inOneMeasure, show } from '../telling';

const SECONDS_PER_MINUTE = 60;

export const timeToFill = defineFunction({
  name: 'FILLTIME',
  summary: 'Minutes that a tap takes to fill a volume',
  parameters: {
    volume: number('What is filled', { atLeast: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    flow: number('Flow of the tap', { above: 0 }),
    flow_unit: unit('Unit of the flow', 'flow'),
  },
  result: { kind: 'number', description: 'Minutes' },
  examples: [{ args: [60, 'gal', 5, 'gal/min'], answer: 12 }],
  source: 'Definition: time = volume ÷ flow',
  compute: (v) =>
    fillTime(toCanonical(v.volume, v.volume_unit), toCanonical(v.flow, v.flow_unit)) / SECONDS_PER_MINUTE,
  working: (v, answer) => {
    const { volumeSteps, flowSteps, volume, flow } = inOneMeasure(
      v.volume,
      v.volume_unit,
      v.flow,
      v.flow_unit,
    );
    return [...volumeSteps, ...flowSteps, `${volume} ÷ ${flow} = ${show(answer)} min`];
  },
});
