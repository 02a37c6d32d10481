/**
 * Takes the focus off a button. A tool of the stage answers Enter at its crosshair; the button that was pressed last would
 * take that Enter instead and be pressed again. Tab goes on from where it was.
 */
export function leaveButton(): void {
  if (typeof document === 'undefined') return;
  if (document.activeElement instanceof HTMLButtonElement) document.activeElement.blur();
}
