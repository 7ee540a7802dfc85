import type { Worksheet } from '@univerjs/core';
import type { ChartEdit } from '../../../workbook/change';
import type { Grid } from './openGrid';

export const placeChart = (_grid: Grid, _sheet: Worksheet, _chart: ChartEdit): void => {};
