export * from './definition';
export * from './catalogue';
export * from './call';
export * from './formula';
