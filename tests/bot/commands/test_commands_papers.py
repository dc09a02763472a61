"""Files to print or to carry off, by command."""

from __future__ import annotations

from tests.machine import Machine


def test_a_calendar_is_written_and_told(farm: Machine) -> None:
    """Under its own name where none is given; for programs as JSON."""
    told = farm.ok("calendar")
    assert told.endswith("File: chores.ics\n")
    assert told.startswith("7 chores until ")
    content = (farm.folder / "chores.ics").read_bytes()
    document = farm.json("calendar", "--out", "other.ics")
    assert document == {"file": "other.ics", "bytes": len(content), "text": told.splitlines()[0]}
    assert (farm.folder / "other.ics").read_bytes() == content


def test_a_place_that_can_not_be_written_to(farm: Machine) -> None:
    """Says so, and what to do."""
    problem = farm.refused("calendar", "--out", "no/such/folder/chores.ics")
    assert problem["code"] == "no_file"


def test_standard_output_holds_one_thing(farm: Machine) -> None:
    """The file or JSON."""
    assert farm.run("calendar", "--out", "-", "--json").exit_code == 2


def test_cage_cards_are_written(farm: Machine) -> None:
    """As a PDF under their own name, of whom they were asked for; for programs as JSON."""
    assert farm.ok("paper", "cards") == "3 cage cards to print.\nFile: cage-cards.pdf\n"
    assert (farm.folder / "cage-cards.pdf").read_bytes().startswith(b"%PDF-")
    assert farm.ok("paper", "cards", "14", "--size", "a4").endswith("File: cage-card-14.pdf\n")
    told = farm.json("paper", "cards", "--only", "does", "--breed", "mini rex", "--out", "does.pdf")
    assert (told["file"], told["text"]) == ("does.pdf", "2 cage cards to print.")


def test_the_codes_open_the_bot_that_last_served_the_book(farm: Machine) -> None:
    """Or the one that is named."""
    from bot.telegram.met import remember
    from core.app import App, open_book
    from tests.bot.papers.looking import codes

    assert codes(farm.run("paper", "cards", "14", "--out", "-").stdout_bytes) == set()
    named = farm.run("paper", "cards", "14", "--bot", "@barn_notes_bot", "--out", "-").stdout_bytes
    assert codes(named) == {"https://t.me/barn_notes_bot?start=card_14"}
    app = open_book(f"sqlite:///{farm.folder / 'data' / 'herd-book.sqlite'}")
    assert isinstance(app, App)
    remember(farm.folder / "data", app.place, "hill_bot")
    app.close()
    assert codes(farm.run("paper", "cards", "14", "--out", "-").stdout_bytes) == {"https://t.me/hill_bot?start=card_14"}
    assert farm.ok("say", "cage card 14").endswith("cage-card-14.pdf\n")
    assert codes((farm.folder / "data" / "files" / "cage-card-14.pdf").read_bytes()) == {"https://t.me/hill_bot?start=card_14"}


def test_no_paper_of_a_stranger(farm: Machine) -> None:
    """Says so, and what to do."""
    assert farm.refused("paper", "cards", "77")["code"] == "no_animal"


def test_letters_that_no_font_has_are_told(farm: Machine) -> None:
    """Beside the file, which is written all the same."""
    farm.tell("new doe 40 named 𓃹𓃹 mini rex")
    result = farm.run("paper", "cards", "40")
    assert result.exit_code == 0
    assert "No font on this machine has 𓃹:" in result.stderr


def test_each_paper_is_written(farm: Machine) -> None:
    """By its name, all of them PDFs."""
    for words in (
        ("pedigree", "14", "--generations", "5"),
        ("litter", "14"),
        ("plan", "--only", "does"),
        ("chores", "--days", "3"),
        ("crib",),
    ):
        told = farm.json("paper", *words)
        assert (farm.folder / told["file"]).read_bytes().startswith(b"%PDF-"), words


def test_a_pedigree_is_somebodys(farm: Machine) -> None:
    """Asked for nobody's, the command says how to use it."""
    assert farm.run("paper", "pedigree").exit_code == 2


def test_a_paper_goes_with_a_reply(farm: Machine) -> None:
    """From the chat: the file lies in the data folder."""
    assert farm.ok("say", "pedigree of 14 as pdf").endswith("pedigree-14.pdf\n")
    assert (farm.folder / "data" / "files" / "pedigree-14.pdf").read_bytes().startswith(b"%PDF-")
