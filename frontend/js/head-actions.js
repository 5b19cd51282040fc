export const headActions = {};
