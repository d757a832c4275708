/** Focuses the nearest field at or above the path. Details that hide it are opened first: browsers do so for anchors only. */
export function goToField(path: string): void {
  const field =
    document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`) ??
    document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path.split('.').slice(0, -1).join('.'))}"]`);
  for (let at = field?.closest('details'); at; at = at.parentElement?.closest('details')) at.open = true;
  field?.focus();
}
