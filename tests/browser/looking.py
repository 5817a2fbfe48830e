"""What can be measured on a page that stands: axe, size of controls, amber, scroll, nothing inline."""

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"]
LIT = ["color-contrast", "link-in-text-block", "target-size"]
"""What axe can find otherwise in another lighting: the markup is the same, the stylesheet's values are not."""
LEAST = 48
"""Pixels that a finger needs."""

INLINE = """() => [
  ...[...document.querySelectorAll("[style],style,script:not([src])")].map((one) => one.outerHTML.slice(0, 120)),
  ...[...document.querySelectorAll("*")].flatMap((one) => [...one.attributes]
    .filter(({name, value}) => /^on/.test(name) || /^\\s*javascript:/i.test(value))
    .map(({name, value}) => `${one.tagName} ${name}=${value}`)),
]"""

AMBER = """() => {
  const probe = document.createElement("canvas").getContext("2d");
  probe.fillStyle = getComputedStyle(document.documentElement).getPropertyValue("--lamp").trim();
  const [r, g, b] = probe.fillStyle.match(/[0-9a-f]{2}/g).map((part) => parseInt(part, 16));
  const lamp = `rgb(${r}, ${g}, ${b})`;
  const lamps = [...document.querySelectorAll(".lamp-track label:has(:checked)")].slice(1);
  return [...document.querySelectorAll("main *")].filter((one) => {
    if (lamps.includes(one)) return false;
    const style = getComputedStyle(one);
    const drawn = one instanceof SVGElement && one.getBBox && style.fill === lamp;
    return (style.backgroundColor === lamp || drawn) && one.getClientRects().length;
  }).map((one) => one.outerHTML.slice(0, 90));
}"""

LOW = """(least) => {
  const alone = (link) => {
    const text = link.closest("p,li,dd,td,figcaption,label") ?? link.parentElement;
    return getComputedStyle(link).display !== "inline" || text.textContent.trim() === link.textContent.trim();
  };
  const target = (one) => one.matches("[type=radio],[type=checkbox]") ? one.labels[0] ?? one : one;
  const seen = (one) => one.checkVisibility({visibilityProperty: true}) && !one.matches(".skip");
  const all = [...document.querySelectorAll("a[href],button,input:not([type=hidden]),select,textarea,summary")];
  return all.filter(seen).filter((one) => !one.matches("a") || alone(one)).map(target)
    .map((one) => [one.getBoundingClientRect().height, one.outerHTML.replace(/\\s+/g, " ").slice(0, 100)])
    .filter(([height]) => height < least - 0.05)
    .map(([height, html]) => `${height.toFixed(1)} px: ${html}`);
}"""

WIDE = """() => {
  const edge = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= edge) return [];
  const out = [...document.body.querySelectorAll("*")].filter((one) => one.getBoundingClientRect().right > edge + 0.5);
  return [`${document.documentElement.scrollWidth} px: `
    + out.slice(-3).map((one) => one.outerHTML.slice(0, 90)).join(" | ")];
}"""


def axe_faults(page: Page, *, lit: bool = False) -> list[str]:
    """Return what axe finds wrong by WCAG 2.0 to 2.2, A and AA, and by best practice: rule, place, reason.

    `lit` asks for nothing but what another lighting can change.
    """
    if not page.evaluate("'axe' in window"):
        page.evaluate(Axe().axe_script)
    options = {"resultTypes": ["violations"], "preload": False, "runOnly": _run_only(lit)}
    found = page.evaluate("async (options) => (await axe.run(options)).violations", options)
    return [_spoken(one["id"], node) for one in found for node in one["nodes"]]


def _run_only(lit: bool) -> dict[str, object]:
    return {"type": "rule", "values": LIT} if lit else {"type": "tag", "values": RULES}


def _spoken(rule: str, node: dict) -> str:
    reasons = [check["message"] for check in [*node["any"], *node["all"], *node["none"]]]
    return f"{rule} at {' '.join(map(str, node['target']))}: {'; '.join(reasons)}"


def open_folds(page: Page) -> None:
    """Open everything that is folded in the page itself."""
    page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")


def inline(page: Page) -> list[str]:
    """Return styles, scripts and acts that stand in the page itself."""
    return page.evaluate(INLINE)


def amber(page: Page) -> list[str]:
    """Return what is filled with the lamp's amber in the content; of several panels one lamp counts."""
    return page.evaluate(AMBER)


def low(page: Page) -> list[str]:
    """Return the controls that are lower than a finger needs; links in running text are no controls."""
    return page.evaluate(LOW, LEAST)


def wide(page: Page) -> list[str]:
    """Return what makes the page scroll sideways."""
    return page.evaluate(WIDE)


def axe(page: Page) -> None:
    """Fail where axe finds anything."""
    assert axe_faults(page) == []
