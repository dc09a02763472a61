"""Where the numbers come from, and how far each source was seen by whoever wrote the number down."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Source:
    """title: author, title, year, where; seen: one of `core.handbook.figure.SEEN`."""

    title: str
    seen: str


SOURCES: Final[dict[str, Source]] = {
    # Books, bulletins and papers
    "RP": Source("McNitt, Lukefahr, Cheeke and Patton, Rabbit Production, 9th ed. 2013, CABI, chapters 4 to 6 (reading sample)", "page"),
    "MSU": Source("Michigan State University Extension, Rabbit Tracks: Breeding Techniques and Management, 2017", "page"),
    "FL4H": Source("Florida 4-H, Market Rabbits, activities 5 and 8", "page"),
    "TX": Source("Lukefahr, Paschal and Ford, Backyard Production of Meat Rabbits in Texas, Texas Agricultural Extension Service", "page"),
    "OSU745": Source("Bogart, Rabbit Production, Oregon State University Extension Bulletin 745, revised 1962", "page"),
    "MSDp": Source("Pet owner's page on rabbit reproduction whose figures match the MSD/Merck manual (the match is from memory)", "page"),
    "THAI": Source("National Laboratory Animal Center, Mahidol University, data sheet of the New Zealand White", "page"),
    "WRS499": Source("Rashwan et al. 2003, gestation length of Pannon White does, World Rabbit Science, article 499", "abstract"),
    "WRS444": Source("Sorensen et al., litter traits of Danish White rabbits, World Rabbit Science, article 444", "abstract"),
    "WRS381": Source("Su et al., growth of Danish White rabbits, World Rabbit Science, article 381", "abstract"),
    "WRS433": Source(
        "Moura, Polastre and Wechsler 2000, dam and litter inbreeding in Botucatu rabbits, World Rabbit Science, article 433", "abstract"
    ),
    "WRS322": Source(
        "Cervera, Blas and Fernandez-Carmona 1997, temperature and intake of growing rabbits, World Rabbit Science, article 322", "abstract"
    ),
    "MEX": Source(
        "New Zealand x Californian, Mexico: gain, feed and carcass from 28 to 70 days (the row of the growth tables)", "abstract"
    ),
    "MEXOR": Source(
        "Postweaning performance of two New Zealand White lines, Mexican and Oregonian, and their crosses fed a high forage diet",
        "abstract",
    ),
    "NRC77": Source("National Research Council, Nutrient Requirements of Rabbits, 2nd revised ed. 1977, table 1", "page"),
    "WRS450": Source("Kasa and Thwaites, semen of bucks after heat, World Rabbit Science, article 450", "abstract"),
    "WRS413": Source("Poigner et al. 2000, birth weight and litter uniformity, World Rabbit Science, article 413", "abstract"),
    "EGY": Source("Elmaghraby and Elkholya, litter losses of purebred New Zealand White (104 litters, 866 kits)", "abstract"),
    "FONT": Source(
        "Seasonal variation in reproduction of New Zealand White, US Rabbit Experiment Station, Fontana, data of 1943-60", "abstract"
    ),
    "SIKA": Source(
        "Planinc, Kermauner, Malovrh and Kovac, growth and mortality of SIKA suckling rabbits, Acta agriculturae Slovenica", "abstract"
    ),
    "TRIN": Source("Rastogi, rabbit performance in Trinidad, Tropical Agriculture (Trinidad) 68(4)", "abstract"),
    "RAO77": Source("Rao et al. 1977, New Zealand White, Journal of Animal Science 44(6):1021", "abstract"),
    "AUS": Source(
        "Growth of New Zealand White, Californian, Flemish and crosses, Australia (perhaps Prayaga and Eady 2003: that is from memory)",
        "abstract",
    ),
    "FERR98": Source("Ferreira and Carregal 1998, 6th World Rabbit Congress, C163-165", "abstract"),
    "BLASCO93": Source("Blasco and Gomez 1993, growth curves of rabbits, Animal Production 57:332", "abstract"),
    "SANZ89": Source("Sanz, Ortiz, de Blas and Fraga 1989, critical temperature of sucking rabbits, Animal Production", "abstract"),
    "MO13": Source("University of Missouri beginning-farming extension blog, Raising Meat Rabbits, 2 May 2013", "page"),
    "MILL": Source("A feed mill's page on weighing rabbit feed (bushel weights of one feed)", "page"),
    "SWEET13": Source("Sweet et al. 2013, body condition of pet rabbits, Veterinary Record 173:369", "abstract"),
    # Breed weights
    "MSX": Source("Mississippi State University Extension, Rabbits: A Fun 4-H Project", "page"),
    "ARBAP": Source("ARBA, Rabbit Breed Profiles (replaces pp. 12-26 of the Rabbit Resource Handbook), p. 12", "page"),
    "SHER20": Source("Sherlock 1920, Care and Management of Rabbits, p. 46 (historic)", "page"),
    "REVIEW": Source("Rashwan and Marai 2000, mortality of young rabbits, as cited by a review page", "weak"),
    "ENCY": Source("Breed list of an encyclopaedia copy", "weak"),
    "HOBBY": Source("Breed pages of breeders and clubs, no author named", "weak"),
    "TRADE": Source("Trade standard as commonly printed, from memory", "memory"),
    # Coat color genes
    "OMIA201": Source("OMIA 000201-9986, agouti (ASIP) in the rabbit, quoting Robinson 1958", "page"),
    "FONT10": Source("Fontanesi et al. 2010, ASIP and the self coat of rabbits, Genomics 95:166", "abstract"),
    "LETKO20": Source("Letko et al. 2020, the deletion behind the rabbit's tan pattern (at)", "abstract"),
    "OMIA1249": Source("OMIA 001249-9986, brown (TYRP1) in the rabbit, quoting Utzeri et al. 2014, Animal Genetics 45:600", "page"),
    "OMIA202": Source("OMIA 000202-9986, albino series (TYR) in the rabbit, and Aigner et al. 2000", "abstract"),
    "OMIA31": Source("OMIA 000031-9986, dilution (MLPH) in the rabbit, quoting Demars et al. 2018", "page"),
    "ONSLOW22": Source("Onslow 1922, the steel coat of rabbits, Journal of Genetics 12:91", "abstract"),
    "CASTLE32": Source("Castle 1932, English and Dutch spotting, Carnegie Institution of Washington Publication 427", "extract"),
    "FONT21": Source("Fontanesi 2021, review of rabbit coat color genes (table of MC1R alleles)", "extract"),
    "OMIA1597": Source("OMIA 001597-9986, English spotting (KIT) in the rabbit, quoting Fontanesi et al. 2014", "page"),
    # Where no page can be named
    "common-practice": Source("Common practice of small breeders", "common practice"),
    "memory": Source("From memory: nobody opened a source for it", "memory"),
    "ours": Source("Chosen for this program; the note tells how", "ours"),
}
