"""Cautions: what to say where work can hurt someone. The program never diagnoses and never invents a withdrawal time.

The words are ours. They defer to the label, the vet and the law of the place.
"""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

NOT_EATING_HOURS: Final = Figure(12, "hours", 8, 24, "HOBBY", "no feed taken or no droppings: rescue pages agree, none has an author")

WITHDRAWAL: Final = (
    "Withdrawal time is on the label or set by your vet: few products are labelled for rabbits. "
    "I only keep the days you give me; I never guess them."
)
WITHDRAWAL_UNKNOWN: Final = "No withdrawal time was given. Ask your vet before anyone eats this animal."
WITHDRAWAL_RUNNING: Final = "Not to be eaten yet: the withdrawal time you noted is not over."
DIED_BY_ITSELF: Final = "It died by itself: that is not for eating."
SLAUGHTER: Final = "Slaughter and euthanasia are for a trained person, in a way your vet approves and local law allows."
TOO_YOUNG_TO_GO: Final = "They are {age} old: kits need their mother's milk until they are weaned. Let them go after that."
SELLING_MEAT: Final = "Rules for selling rabbit meat differ from place to place. Ask your department of agriculture before you sell."
ZOONOSES: Final = (
    "Some rabbit illnesses pass to people. Wear gloves, wash your hands, keep bites and scratches clean, and see a doctor if you fall ill."
)
REPORTABLE: Final = "Several sudden deaths can be a disease that must be reported. Touch little, let nobody in, and call a vet today."
HEAT: Final = "Heat kills rabbits. Give shade, moving air and cold water now. Panting or a wet nose: call a vet."
COLD: Final = "Check the nests: kits in a heap, warm bellies, fur over them, box dry and out of the draught."
CALL_A_VET: Final = "I can't tell what this is. Please call a vet."
LONG_KINDLING: Final = "Past her time. If she strains or is off her feed, call a vet."
ADVICE: Final = "This is advice from the notes. You decide."

#: Words in a note that mean: say CALL_A_VET. Lower case, matched as whole words or phrases.
RED_FLAGS: Final = (
    "off feed", "not eating", "won't eat", "wont eat", "no poop", "no droppings", "bloat", "bloated", "panting", "open mouth",
    "gasping", "paralyzed", "paralysed", "dragging", "can't stand", "cant stand", "flystrike", "fly strike", "maggots", "blood", "bloody",
    "bleeding", "straining", "seizure", "seizing", "head tilt", "wry neck", "limp", "collapsed", "broken leg", "broken back",
)  # fmt: skip

#: Words in a later note that mean: it is over. Matched as whole words or phrases, where none of NOT_YET stands in the note.
RECOVERED: Final = (
    "better", "fine", "ok", "okay", "well", "good", "recovered", "healed", "healthy", "cured", "cleared", "clear", "over it", "over her", "over his",
    "normal", "eating again", "all right", "alright", "no longer", "gone", "back on feed",
)  # fmt: skip
NOT_YET: Final = (
    "not", "no better", "isn't", "isnt", "aint", "still", "a bit better", "little better", "bit better", "than", "almost", "nearly", "worse", "doesn't",
    "doesnt", "never", "hope", "hopefully", "not eating", "if", "getting",
)  # fmt: skip
ASK_BEFORE: Final = "Not well by the last notes. Ask your vet before anyone buys or eats this animal."

#: Signs that may pass to people: say ZOONOSES.
CATCHING_SIGNS: Final = ("ringworm", "mange", "mites", "tularemia", "bald patch", "scabs", "crusty")
