export const paperActions = {};
