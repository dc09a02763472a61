"""How this person types: a few ways to say each thing, some terse, some chatty, some with a slip of the thumb."""

from __future__ import annotations

import random

from demo_data.cast import Rabbit

SLIPS = {"kindled": "kindeld", "weighed": "weigehd", "palpated": "palpted", "weaned": "weened", "tattooed": "tatooed"}


def say(chance: random.Random, *ways: str) -> str:
    """One of the ways, now and then with a slip."""
    text = chance.choice(ways)
    if chance.random() < 0.04:
        for right, wrong in SLIPS.items():
            text = text.replace(right, wrong, 1)
    return text


def pounds(grams: float) -> str:
    """A weight as it is typed: 4-6."""
    lb, oz = divmod(round(grams / 28.349523125), 16)
    return f"{lb}-{oz}"


def bred(chance: random.Random, doe: Rabbit, buck: Rabbit) -> str:
    """A mating."""
    falls = chance.choice((1, 2, 2, 3))
    return say(
        chance,
        f"bred {doe.tag} to {buck.called}, {falls} falls",
        f"bred {doe.tag} to {buck.tag}",
        f"{doe.tag} x {buck.tag} this morning",
        f"put {doe.called} in with {buck.called}, {falls} falls",
        f"bred {doe.called} to {buck.called}",
    )


def palpated(chance: random.Random, doe: Rabbit, *, settled: bool) -> str:
    """Feeling for kits."""
    if settled:
        return say(chance, f"palpated {doe.tag} bred", f"palp {doe.tag} +", f"{doe.called} palpated bred, feels like grapes", f"palpated {doe.tag}, bred")
    return say(chance, f"{doe.tag} palpated open", f"palpated {doe.tag} open", f"{doe.called} palpated open")


def kindled(chance: random.Random, doe: Rabbit, born: int, dead: int) -> str:
    """A birth."""
    if dead:
        return say(
            chance,
            f"doe {doe.tag} kindled {born}, {dead} dead",
            f"{doe.tag} k{born} {dead}d",
            f"{doe.called} kindled {born}, {born - dead} alive, {dead} dead",
            f"{doe.tag} kindled {born} last night, {dead} dead",
        )
    return say(
        chance,
        f"doe {doe.tag} kindled {born}, all alive",
        f"{doe.called} kindled {born}, all alive",
        f"{doe.tag} kindled {born} all alive last night",
        f"{doe.tag} kindled {born}, 0 dead",
    )


def lost(chance: random.Random, doe: Rabbit, count: int, way: str) -> str:
    """Kits that died in the nest."""
    kits = "kit" if count == 1 else "kits"
    match way:
        case "scattered":
            return say(chance, f"{doe.tag} lost {count} {kits}, scattered all over the cage", f"{doe.called} scattered her kits, lost {count}")
        case "stepped on":
            return say(chance, f"{doe.tag} stepped on {count} {kits}", f"{doe.called} stepped on {count} {kits}, dead")
        case "ate":
            return say(chance, f"{doe.tag} ate {count} of her kits", f"{doe.called} ate {count} kits")
        case "froze":
            return say(chance, f"{doe.tag} lost {count} {kits}, froze on the wire", f"{doe.called} lost {count} {kits} to the cold")
        case "found cold outside the box":
            return say(chance, f"{doe.tag} lost {count} {kits}, found outside the box")
        case "runty":
            return say(chance, f"{doe.tag} lost {count} {kits}, starved", f"{doe.called} lost {count} {kits}, runty")
        case _:
            return say(chance, f"{doe.tag} lost {count} {kits}", f"lost {count} {kits} from {doe.called}'s litter")


def weaned(chance: random.Random, doe: Rabbit, bucks: int, does: int) -> str:
    """A litter leaves its doe."""
    both = f"{bucks} bucks {does} does" if bucks and does else f"{bucks} bucks" if bucks else f"{does} does"
    return say(
        chance,
        f"weaned {doe.tag}: {bucks + does} kits, {both}",
        f"weaned {doe.tag}, {bucks + does} kits",
        f"weaned {doe.called}'s litter, {bucks + does} kits: {both}",
    )


def weighed(chance: random.Random, rows: list[tuple[str, float]]) -> str:
    """One to five rabbits on the scale."""
    if len(rows) == 1:
        tag, grams = rows[0]
        return say(chance, f"{tag} {pounds(grams)}", f"weighed {tag} {pounds(grams)}", f"{tag} weighs {pounds(grams).replace('-', ' lb ')} oz")
    listed = ", ".join(f"{tag} {pounds(grams)}" for tag, grams in rows)
    return say(chance, f"weighed {listed}", listed, f"weights: {listed}")
