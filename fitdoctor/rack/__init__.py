"""At the rack: the same chain with few answers; buy, buy only if, or leave it."""

from fitdoctor.rack.answer import RackAnswer, RackSum, answer_at, in_a_hurry, next_question, prospects_for, rack_answer
from fitdoctor.rack.comparison import Compared, compare, rack_json
from fitdoctor.rack.decision import DECISION_WORDS, Decision
from fitdoctor.rack.question import CANNOT_TELL, AnswerChoice, Rack, RackQuestion, answered
from fitdoctor.rack.simulation import Simulation, simulate

__all__ = [
    "CANNOT_TELL",
    "DECISION_WORDS",
    "AnswerChoice",
    "Compared",
    "Decision",
    "Rack",
    "RackAnswer",
    "RackQuestion",
    "RackSum",
    "Simulation",
    "answer_at",
    "answered",
    "compare",
    "in_a_hurry",
    "next_question",
    "prospects_for",
    "rack_answer",
    "rack_json",
    "simulate",
]
