"""How good the answers are: the solved cases run through the chain."""

from fitdoctor.evaluate.held_back import is_held_back
from fitdoctor.evaluate.run import MOST_QUESTIONS, Evaluation, Scores, evaluate, evaluation_json
from fitdoctor.evaluate.text import compare, evaluation_text

__all__ = ["MOST_QUESTIONS", "Evaluation", "Scores", "compare", "evaluate", "evaluation_json", "evaluation_text", "is_held_back"]
