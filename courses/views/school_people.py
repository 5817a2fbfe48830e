"""The manager's pages about people: who belongs here, what they are called, and the roles they hold."""

from collections.abc import Callable
from copy import copy
from uuid import UUID

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.db.models import Prefetch, Q, QuerySet
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from courses.access import get_manager, get_person_managed, get_role_of
from courses.actions import (
    activate,
    change_role,
    deactivate,
    end_role,
    enrol,
    erase_person,
    is_erased,
    keep_person,
)
from courses.errors import Refused
from courses.forms.school import PersonFindForm, PersonForm, RoleChangeForm, RoleForm
from courses.models import Membership, Person
from courses.views.school import went_through

PAGE = 50
"""People on one page of the list."""


def people_found(form: PersonFindForm) -> QuerySet[Person]:
    """Return who fits what was looked for, by name; the erased only where their word was typed."""
    form.is_valid()
    wanted = form.cleaned_data
    words = wanted.get("q", "")
    held = {name: wanted[name] for name in ("cohort", "role") if wanted.get(name)}
    people: QuerySet[Person] = Person.objects.filter(Q(name__icontains=words) | Q(email__icontains=words))
    if not words:
        people = people.exclude(email__endswith="@erased.invalid")
    if held:
        people = people.filter(pk__in=Membership.objects.filter(**held).values("person"))
    roles = Membership.objects.select_related("cohort").order_by("role", "cohort__name")
    return people.order_by("name", "pk").prefetch_related(Prefetch("memberships", roles))


@login_required
def index(request: HttpRequest) -> HttpResponse:
    """List the people of the school, those looked for."""
    get_manager(request.user)
    form = PersonFindForm(request.GET)
    pages = Paginator(people_found(form), PAGE)
    kept = request.GET.copy()
    kept.pop("page", None)
    page = {
        "form": form,
        "page": pages.get_page(request.GET.get("page")),
        "found": pages.count,
        "query": kept.urlencode(),
    }
    return render(request, "courses/person_list.html", page, status=422 if form.errors else 200)


@login_required
def detail(request: HttpRequest, handle: UUID) -> HttpResponse:
    """Show and keep what the school has of a person."""
    manager, person = get_manager(request.user), get_person_managed(handle)
    form = PersonForm(request.POST or None, instance=copy(person))
    if (
        request.method == "POST"
        and went_through(form, lambda: keep_person(person, form.cleaned_data), "email") is not None
    ):
        messages.success(request, _("Kept."))
        return redirect("person-detail", handle)
    page = {
        "person": person,
        "form": form,
        "held": person.memberships.select_related("cohort").order_by("role", "cohort__name"),
        "erased": is_erased(person),
        "me": person == manager,
    }
    return render(request, "courses/person_detail.html", page, status=422 if form.errors else 200)


@login_required
def role_give(request: HttpRequest, handle: UUID) -> HttpResponse:
    """Give a person a role."""
    manager, person = get_manager(request.user), get_person_managed(handle)
    form = RoleForm(person, request.POST or None)

    def give() -> Membership:
        return enrol(person, by=manager, now=timezone.now(), **form.chosen())

    if request.method == "POST" and went_through(form, give) is not None:
        messages.success(request, _("The role is given."))
        return redirect("person-detail", handle)
    page = {"person": person, "form": form}
    return render(request, "courses/role_keep.html", page, status=422 if form.errors else 200)


@login_required
def role_change(request: HttpRequest, handle: UUID, pk: int) -> HttpResponse:
    """Change where a role holds, what it teaches and what it may sign."""
    manager, person = get_manager(request.user), get_person_managed(handle)
    membership = get_role_of(person, pk)
    form = RoleChangeForm(membership, request.POST or None)

    def change() -> Membership:
        return change_role(membership, by=manager, now=timezone.now(), **form.chosen())

    if request.method == "POST" and went_through(form, change) is not None:
        messages.success(request, _("Kept."))
        return redirect("person-detail", handle)
    page = {"person": person, "form": form, "membership": membership}
    return render(request, "courses/role_keep.html", page, status=422 if form.errors else 200)


@login_required
def role_end(request: HttpRequest, handle: UUID, pk: int) -> HttpResponse:
    """Ask whether a role shall end; end it."""
    manager, person = get_manager(request.user), get_person_managed(handle)
    membership = get_role_of(person, pk)
    if request.method == "POST":
        act = lambda: end_role(membership, by=manager, now=timezone.now())  # noqa: E731
        return _back_to(request, handle, act, _("The role is ended."))
    return render(request, "courses/role_end.html", {"person": person, "membership": membership})


@login_required
@require_POST
def shut_out(request: HttpRequest, handle: UUID) -> HttpResponse:
    """Shut a person out."""
    manager, person = get_manager(request.user), get_person_managed(handle)
    return _back_to(request, handle, lambda: deactivate(person, by=manager), _("They can’t sign in any more."))


@login_required
@require_POST
def let_in(request: HttpRequest, handle: UUID) -> HttpResponse:
    """Let a person in again."""
    get_manager(request.user)
    person = get_person_managed(handle)
    return _back_to(request, handle, lambda: activate(person), _("They can sign in again."))


@login_required
def erase(request: HttpRequest, handle: UUID) -> HttpResponse:
    """Say what goes and what stays; erase a person."""
    manager, person = get_manager(request.user), get_person_managed(handle)
    if request.method == "POST":
        act = lambda: erase_person(person, by=manager, now=timezone.now())  # noqa: E731
        return _back_to(request, handle, act, _("Erased."))
    return render(request, "courses/person_erase.html", {"person": person, "erased": is_erased(person)})


def _back_to(request: HttpRequest, handle: UUID, act: Callable[[], object], said: str) -> HttpResponse:
    try:
        act()
        messages.success(request, said)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("person-detail", handle)
