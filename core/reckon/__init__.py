"""The calculators: kinship, breeding values, survival, trend, growth, feed, coat colour, ranking.

Every number of the trade comes in as an argument; frozen results go out. Nothing here knows a herd, a note or a clock.
Import a module where it is used (numpy and scipy load with it); `core.reckon.curve` alone is plain Python.

curve
    weight_at_age(age_days, adult_g, b, k) -> g            age_at_weight(weight_g, adult_g, b, k) -> days | None
    carried(weight_g, from_day, to_day, adult_g, b, k) -> g
    gain_at_age(age_days, adult_g, b, k) -> g/day          inflection_age(b, k) -> days         greatest_gain(adult_g, k) -> g/day
growth
    fitted(weighings=[(age, g)]) -> GrowthFit | None
    GrowthFit.weight_at(age)  .age_at(g)  .age_interval(g, level=0.8)  .date_of(born, g)  .dates_of(born, g, level=0.8)
    GrowthFit.chance_by(age, g)  .chance_ever(g)  .ages_when(g, chances, until=) -> (days | None, ...)
    standard_weight(weighings=[(age, g)], age, adult_b_k, within_days) -> g | None
growing_together
    growing_together(animals=[Young(key, kind, weighings)], handbook={kind: (A, b, k)}, belief) -> GrowingTogether
    GrowingTogether.animals[key]  .kinds[kind]  .spread  .scatter
pedigree
    pedigree(rows=[(id, sire, dam)]) -> Pedigree | PedigreeProblem(code, ids)
    Pedigree.ids  .parents(id)  .ancestors(ids)  .only(ids)  .generations(id)  .warnings (a sire that is also a dam)
kinship
    kinship(pedigree, among=ids) -> Kinship                inbreeding(pedigree) -> {id: F}
    coi(pedigree, sire, dam) -> F of their kits
    Kinship.of(a, b)  .inbreeding[id]  .mean_of(id)  .mean()  .mean_between()  .table  .among
mixed_model
    breeding_values(pedigree, records, variances, ask=None) -> BreedingValues
    Record(animal, value, fixed={factor: level}, random={effect: level})
    Variances(animal, residual, others={effect: variance})
    BreedingValues.of(id) -> BreedingValue(value, pev, reliability, reliability_inbred)  .better(a, b)  .effects[effect][level]
    BreedingValues.fitted  .contrast(factor, a, b) -> Contrast | None  .relative_to(ids) -> {id: value}
survival
    Prior(alpha, beta, source)                             herd_prior(does=[(alive, kept)], default) -> Prior
    likeness(litters_by_doe, default) -> rho               survival(litters=[(alive, kept)], prior, likeness=0, level=0.8) -> Survival
    chance_better(a, b) -> P                               moment_prior(does) -> Prior | None
    Survival.estimate  .low  .high  .chance_below(line)  .chance_at_least(born, kept)  .expected(born)
    litters_to_be_sure(survival, line, born=, sure=, at_most=) -> litters | None
does_together
    does_together(does={id: [(alive, kept)]}, belief, level=0.8) -> Together       .does[id] -> Survival  .stranger  .mean  .weight  .likeness
bad_nights
    bad_nights(nests=[Nest(key, born, until, losses)], bands, sure=, noted=, sure_if_noted=) -> (BadNight(day, hit, at_risk, chance), ...)
trend
    survival_trend(litters=[(alive, kept)], prior_sd) -> SurvivalTrend | None      .chance_of_fall  .fitted (None where infinite)
litters_together
    litters_together(does={id: LittersTold(sizes, expected)}, belief) -> LittersTogether       .does[id] -> LitterSize  .breed  .breed_sd
    LitterSize.level  .slope  .chance_of_fall  .at_best  .following, each but the chance with its _sd
    chance_larger(a, b) -> P
feed
    FeedFigures(...)  Mouth(state=, weight_g=, ...)        daily_need(mouth, figures, celsius=None) -> g/day
    eaten_growing(weight_at, ages, figures) -> g           stops_paying(weight_at, ages, figures, feed_cents_a_g=, live_cents_a_g=) -> week | None
    need_to_hold(expected_g, told_g, weight_g, points=, points_sd=, days=, figures) -> Holding(need, deviation, learned)  .low  .high
eating
    eaten(diners=[Diner(key=, weight_g=, ...)], days, figures, celsius=[...]) -> Table(keys, grams, heads, weights), a row a diner, a column a day
    Diner's days: Spell(first, end, chance)  Nursing(Spell, kits, kits_age)
colour
    named(genotype={locus: "A/a"}) -> word                 litter_colours(sire, dam) -> {word: Fraction}
    said_genes(said, also=()) -> Allowed(loci={locus: genotypes}, tied=(A, E) pairs or None) | None (no such word)
    words_meant(said) -> words of `named`'s                at_least_one(share, kits) -> P
founders
    founder_shares(locus, alleles, shown, founders=((genotypes, how many), ...)) -> {allele: share}
genotype
    genotype_chances(pedigree, locus, allowed={id: genotypes}, frequencies=None, error=0, ask=None) -> {id: {genotype: P}} | Impossible | TooTangled
    joint_chances(pedigree, loci, allowed, founders=Founders(common, own), error=0, ask=None) -> {id: {(genotype a locus): P}} | ...
    conflicts(pedigree, loci, allowed, founders) -> ((ids whose colours can't stand together), ...)
    | TooTangled(cells)
choose
    ranked(values={id: value}, better) -> (Ranked(id, value, expected_rank, better_than_next), ...); better(a, b) -> P
winter
    winter.choose.best(candidates, limits, kin) -> Choice | Unfit(changes, limits, choice, or_lift); the types stand in winter.types
"""
