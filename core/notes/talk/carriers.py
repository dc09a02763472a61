"""Sentences that an answer completes, by the kind of what was asked about. `{said}` is the answer, the rest is known already."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

CARRIERS: Final[Mapping[str, tuple[str, ...]]] = {
    "kindled": ("{doe} kindled {said}",),
    "bred": ("bred {doe} to {said}", "bred {said} to {buck}", "bred {doe} to {buck} {said}"),
    "refused": ("{doe} refused {said}",),
    "palpated": ("palpated {doe} {said}",),
    "nest_box": ("nest box {said} {doe}", "nest box {change} {doe} {said}"),
    "missed": ("{doe} missed {said}",),
    "kits_lost": ("{doe} lost {said}", "{doe} lost {said} kits", "{doe} lost {count} kits {said}"),
    "fostered": (
        "moved {said} from {from} to {to}",
        "moved {count} kits from {from} to {said}",
        "moved {count} kits from {said} to {to}",
        "moved {count} kits from {from} to {to} {said}",
    ),
    "kit_count": ("{doe} has {said} kits", "{doe} has {said}", "{doe} has {count} kits {said}"),
    "weaned": ("weaned {doe} {said}", "weaned {doe} {said} kits"),
    "weighed": ("{who} weighed {said}",),
    "litter_weighed": ("{doe} litter weighed {said}",),
    "condition": ("{who} bcs {said}",),
    "ration": ("{who} gets {said}", "{scope} get {said}"),
    "feed_bought": ("bought {said} feed", "bought {bags} bags feed {said}"),
    "feed_left": ("{said} feed left",),
    "treated": ("gave {who} {with} {said}", "gave {who} {said}"),
    "moved": ("{who} to cage {said}", "moved {who} to {said}"),
    "died": ("{who} died {said}", "found {who} dead {said}"),
    "sold": ("sold {who} {said}", "sold {said} of {litter_of}'s kits"),
    "for_sale": ("list {who} for {said}", "list {who} {said}"),
    "culled": ("butchered {who} {said}",),
    "given_away": ("gave {who} to {said}",),
    "planned": ("{what} {who} {said}",),
    "remind": ("remind me {said} to {text}",),
    "tagged": ("tattooed {tag} out of {said}", "tattooed {tag} out of {litter_of} {said}"),
    "animal": ("new {sex} {tag} {said}",),
    "shown": ("{who} {said} at the show",),
    "scored": ("{who} {trait} {said}",),
}
