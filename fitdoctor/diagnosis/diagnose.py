"""From a case to its likely causes."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import CaseNet, case_net
from fitdoctor.diagnosis.explain import explanations
from fitdoctor.diagnosis.learning import Learned
from fitdoctor.diagnosis.posterior import Posterior, posterior
from fitdoctor.diagnosis.ranking import Diagnosis, Explanation
from fitdoctor.diagnosis.treat import likely
from fitdoctor.diagnosis.why import as_finding, finding_title, rank
from fitdoctor.knowledge.knowledge import Knowledge

__all__ = ["Diagnosis", "diagnose", "likely"]


def diagnose(knowledge: Knowledge, case: Case, book: Learned | None = None) -> Diagnosis:
    """Rank the causes of what is seen, with reasons and whole explanations.

    Args:
        book: what was learned from closed jobs; without it the printed chances hold.
    """
    net = case_net(knowledge, case, book)
    found = posterior(net.net, net.yes, net.no)
    accounts = explanations(net.net, net.no, found)
    return Diagnosis(
        causes=rank(knowledge, net, found),
        explanations=tuple(Explanation(tuple(net.causes[c] for c in account.causes), account.chance) for account in accounts),
        note=" ".join(_notes(knowledge, net, found)),
        findings=tuple(as_finding(knowledge, net, row) for row in (*net.yes, *net.no)),
        net=net,
        posterior=found,
    )


def _notes(knowledge: Knowledge, net: CaseNet, found: Posterior) -> Iterator[str]:
    if found.estimated:
        yield "More than 16 findings hang together: the chances are an estimate, give or take 1 in 20."
    for symptom in net.unknown:
        title = knowledge.symptoms[symptom].title if symptom in knowledge.symptoms else symptom
        yield f"‘{title}’ is kept, but it is not described for this garment and changes nothing."
    explained = {row for group in found.groups if group.causes for row in group.findings}
    for row in net.yes:
        if row not in explained:
            yield f"No cause known here brings on ‘{finding_title(knowledge, net.findings[row])}’ on this garment."
