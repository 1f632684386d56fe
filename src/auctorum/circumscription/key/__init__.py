"""An identification key to chosen taxa, from what their authors say; its words, and how often it errs."""

from auctorum.circumscription.key.build import TooFewTaxa, key, key_of
from auctorum.circumscription.key.evaluate import Evaluation, evaluate, identify
from auctorum.circumscription.key.model import Couplet, Division, Expected, Key, Lead, Rule, Threshold, Want

__all__ = [
    "Couplet",
    "Division",
    "Evaluation",
    "Expected",
    "Key",
    "Lead",
    "Rule",
    "Threshold",
    "TooFewTaxa",
    "Want",
    "evaluate",
    "identify",
    "key",
    "key_of",
]
