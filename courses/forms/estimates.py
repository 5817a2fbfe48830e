"""Forms of an estimate: what a job is asked for, in the reader's units, and what was used in the end."""

from collections.abc import Iterable, Mapping
from typing import Any, Final

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext as said
from django.utils.translation import gettext_lazy as _

from courses.forms.sums import OptionField, QuantityField, typed
from courses.trade import film
from courses.trade.errors import TradeError
from courses.trade.estimate import APART_H, RATE, RATES, Grade
from courses.trade.film import FORMULAS, Hull
from courses.trade.minutes import Minutes
from courses.trade.quote import MARGIN_PERCENT, PLACES, Asked, Coat, Quote, quote_of
from courses.trade.ranges import Range
from courses.trade.sums import Input
from courses.trade.units import Preferences, shown, shown_plain

DIMENSIONS: Final = (
    Input.over(film.LENGTH_M, "loa_m", "Length over all, LOA", optional=True),
    Input.over(film.LENGTH_M, "lwl_m", "Length on the waterline, LWL", optional=True),
    Input.over(film.BEAM_M, "beam_m", "Widest beam, B", optional=True),
    Input.over(film.DEPTH_M, "draft_m", "Draft to the keel’s base, D", optional=True),
    Input.over(film.DEPTH_M, "freeboard_m", "Mean freeboard, F", optional=True),
)
BOAT: Final = (
    Input(
        "formula",
        "Part and formula",
        default="T1",
        choices=tuple(FORMULAS),
        words=tuple(formula.words for formula in FORMULAS.values()),
    ),
    *DIMENSIONS,
    Input.over(film.LEFT_OUT_M2, "left_out_m2", "Openings and what is left out", 0.0),
    Input.over(MARGIN_PERCENT, "margin_percent", "Margin on the area", 10.0),
)
GRADES: Final = ("P800", "P1000", "P1200", "P1500", "P2000", "P2500", "P3000")
COAT: Final = (
    Input("method", "Planned by", default="C1", choices=("C1", "C2"), words=("C1 rate", "C2 film it shall leave")),
    Input(
        "substrate", "On, for C1", default="gel_coat", choices=tuple(film.RATE_ML_M2), words=("gel coat", "clear coat")
    ),
    Input.over(film.DRY_UM, "dry_um", "Dry film of a coat, for C2", optional=True),
    Input.over(film.SOLIDS_PERCENT, "solids_percent", "Volume solids, for C2", 35.0),
    Input(
        "loss", "Loss means, for C2", default="L1", choices=("L1", "L2"), words=("L1 a share that goes", "L2 a factor")
    ),
    Input.over(film.LOSS_PERCENT, "loss_percent", "Share that goes, for L1", 30.0),
    Input.over(film.FACTOR, "factor", "Factor, for L2", 1.3),
    Input.over(film.PACK_ML, "pack_ml", "Size of a pack", 50.0),
)
PRICE: Final = (
    *(Input.over(RATE, f"rate_{name}", words[0].upper() + words[1:], optional=True) for name, words in RATES.items()),
    Input.over(APART_H, "apart_h", "Hours priced apart", 0.0),
)
COUNTS: Final = {
    "chemistries": (_("Chemistries"), 1, 4),
    "rotary": (_("Rotary sets, three passes"), 1, 6),
    "da_cut": (_("Dual-action cuts, six passes"), 0, 6),
    "da_finish": (_("Dual-action finishes, four passes"), 1, 6),
    "coats": (_("Coats"), 1, film.COATS[1]),
}
STAGES: Final = 3
WHOLE: Final = _("Write a whole number within the limits.")


def figure_said(figure: float, unit: str, prefs: Preferences) -> str:
    """Return a figure of an estimate as the reader reads it; what is counted has no unit."""
    return shown(figure, unit, prefs) if unit else shown_plain(figure, "ratio", prefs)


class WholeField(forms.IntegerField):
    """A whole number of sets, passes or coats."""

    unit_symbol = ""

    def __init__(self, label: Any, first: int, most: int, least: int = 0) -> None:
        super().__init__(
            label=label,
            initial=first,
            min_value=least,
            max_value=most,
            error_messages=dict.fromkeys(("required", "invalid", "min_value", "max_value"), WHOLE),
        )
        self.widget.attrs.update({"inputmode": "numeric", "autocomplete": "off"})


class EstimateForm(forms.Form):
    """What a job is asked for; ``began`` are the values of an earlier estimate, in base units."""

    name = forms.CharField(label=_("Job"), max_length=80, error_messages={"required": _("Give the job a name.")})
    tried = forms.BooleanField(label=_("A test spot was worked"), required=False)
    left_out = forms.MultipleChoiceField(
        label=_("Left out"), choices=list(PLACES.items()), required=False, widget=forms.CheckboxSelectMultiple
    )
    currency = forms.RegexField(
        r"^[A-Za-z]{3}$",
        label=_("Currency (optional)"),
        required=False,
        error_messages={"invalid": _("Write the three letters of a currency, such as USD.")},
    )

    def __init__(self, prefs: Preferences, data: Any = None, began: Mapping[str, Any] | None = None) -> None:
        start = dict(began or {})
        super().__init__(data=data, initial={"left_out": list(PLACES), **start})
        for wanted in (*BOAT, *COAT, *PRICE):
            self.fields[wanted.name] = OptionField(wanted) if wanted.choices else QuantityField(wanted, prefs)
            self.initial[wanted.name] = typed(wanted, start.get(wanted.name, wanted.default), prefs)
        for name, (label, first, most) in COUNTS.items():
            self.fields[name] = WholeField(label, first, most)
        for stage in range(1, STAGES + 1):
            which = {"n": stage}
            choices = [("", said("none")), *((grade, grade) for grade in GRADES)]
            self.fields[f"grade_{stage}"] = forms.ChoiceField(
                label=said("Grade %(n)s") % which, choices=choices, required=False
            )
            self.fields[f"passes_{stage}"] = WholeField(said("Passes of grade %(n)s") % which, 4, 20, least=1)

    def worked(self, minutes: Minutes) -> Quote | None:
        """Return the quote, or None with what was refused said at its field."""
        if not self.is_valid():
            return None
        try:
            return quote_of(self._asked(), minutes)
        except TradeError as refusal:
            self.add_error(refusal.input if refusal.input in self.fields else None, refusal.sentence)
            return None

    def kept(self, quote: Quote) -> dict[str, Any]:
        """Return the fields of the row that is kept."""
        own = ("name", "tried", "left_out", "currency")
        return {
            **{name: self.cleaned_data[name] for name in own},
            "currency": self.cleaned_data["currency"].upper(),
            "asked": {name: value for name, value in self.cleaned_data.items() if name not in own},
            "worked": quote.as_json(),
        }

    def _asked(self) -> Asked:
        given = self.cleaned_data
        grades = [(given[f"grade_{stage}"], given[f"passes_{stage}"]) for stage in range(1, STAGES + 1)]
        rates = {name: given[f"rate_{name}"] for name in RATES}
        return Asked(
            hull=Hull(**{wanted.name: given[wanted.name] for wanted in DIMENSIONS}),
            coat=Coat(coats=given["coats"], **{wanted.name: given[wanted.name] for wanted in COAT}),
            grades=tuple(Grade(grade, passes) for grade, passes in grades if grade),
            rates={name: rate for name, rate in rates.items() if rate is not None},
            **{name: given[name] for name in ("formula", "left_out_m2", "margin_percent", "apart_h")},
            **{name: given[name] for name in ("chemistries", "rotary", "da_cut", "da_finish")},
        )

    def _bound(self, names: Iterable[str]) -> list[forms.BoundField]:
        return [self[name] for name in names]

    @property
    def boat(self) -> list[forms.BoundField]:
        """Return the fields of the boat."""
        return self._bound(wanted.name for wanted in BOAT)

    @property
    def stages(self) -> list[forms.BoundField]:
        """Return the fields of grades and their passes."""
        return self._bound(f"{name}_{stage}" for stage in range(1, STAGES + 1) for name in ("grade", "passes"))

    @property
    def sets(self) -> list[forms.BoundField]:
        """Return the fields of what is counted."""
        return self._bound(name for name in COUNTS if name != "coats")

    @property
    def coat(self) -> list[forms.BoundField]:
        """Return the fields of the coating."""
        return self._bound(("coats", *(wanted.name for wanted in COAT)))

    @property
    def price(self) -> list[forms.BoundField]:
        """Return the fields of the price."""
        return self._bound(("currency", *(wanted.name for wanted in PRICE)))


class UsedForm(forms.Form):
    """What was used, beside each figure that was estimated; what nobody counted is left blank."""

    def __init__(self, quote: Quote, used: Mapping[str, float], prefs: Preferences, data: Any = None) -> None:
        super().__init__(data=data)
        for name, (words, figure, unit) in quote.estimated().items():
            field = QuantityField(Input.over(Range(0.0, 1e5, unit or "ratio"), name, words, optional=True), prefs)
            field.help_text = said("Estimated %(figure)s") % {"figure": figure_said(figure, unit, prefs)}
            self.fields[name] = field
            self.initial[name] = typed(field.wanted, used.get(name), prefs)

    def clean(self) -> dict[str, Any]:
        """Refuse a page without a figure."""
        given = {name: value for name, value in (super().clean() or {}).items() if value is not None}
        if not given and not self.errors:
            raise ValidationError(said("Nothing was written. Fill in what you counted."))
        return given
