"""Terms of the trade, explained in our own words for somebody who knows plants but not the Code."""

from __future__ import annotations

TERMS: tuple[tuple[str, str], ...] = (
    ("accepted name", "The name under which an author keeps a taxon. It says what that author thinks; another may"
     " accept a different name for the same plants and both may follow the Code."),
    ("act", "Anything a publication does to a name as such: publishing it, moving it to another rank or genus,"
     " replacing it, or fixing its type."),
    ("auct.", "Of authors. Put behind a name that several writers used in a sense its type does not bear out."),
    ("autonym", "The name that appears by itself when a species is first divided: it repeats the species epithet and"
     " takes no author of its own. It covers the part that holds the type of the species (ICN Art. 22 and 26)."),
    ("basionym", "The earlier name whose epithet and type a new combination or a name at a new rank carries on."
     " Its author stays in the citation, in parentheses (ICN Art. 6.10)."),
    ("circumscription", "Where an author draws the line round a taxon: what is taken in, and what is left out."),
    ("compiled", "Said of a treatment that rests on what others wrote rather than on plants its author had in hand."),
    ("correct name", "The one name that the Code allows for a taxon once rank, position and circumscription are"
     " given. Change one of the three and another name may be correct (ICN Art. 11)."),
    ("designation", "What looks like a name and was never validly published. It is no name for the Code, has no"
     " priority and stands in nobody’s way; here it stands in quotation marks (ICN Art. 6.3 and 12.1)."),
    ("effective publication", "Printed matter, or an allowed electronic form, that reached the public. A thesis or a"
     " label usually did not, and then the names in it do not count (ICN Art. 29 to 31)."),
    ("epithet", "The second word of a species name, or the last word of a name below the species."),
    ("heterotypic", "Of two names: resting on different types. Whether they mean the same taxon is a judgement."),
    ("homonym", "A name spelt exactly like another that rests on a different type. The later of the two may not be"
     " used, unless it has been rescued by decision (ICN Art. 53)."),
    ("holotype", "The one specimen or figure that the author of a name used, or named, as its type (ICN Art. 9)."),
    ("homotypic", "Of two names: resting on the same type. They belong together whatever anybody’s judgement."),
    ("illegitimate", "Validly published, but against one of the rules, and so not to be used as the correct name:"
     " for instance a later homonym, or a name that was superfluous when published."),
    ("isonym", "The same name on the same type, published again independently. Only the first counts"
     " (ICN Art. 6, Note 2)."),
    ("lectotype", "A specimen or figure chosen later from the first author’s material, where no holotype was named"
     " or it is lost (ICN Art. 9)."),
    ("legitimate", "Said of a validly published name that goes against none of the rules. Only a legitimate name can be"
     " the correct one (ICN Art. 6.5)."),
    ("majority range", "On this site: the values that fall within the typical range of at least half of the works."),
    ("misapplied", "Of a name: used for plants that its type does not belong with."),
    ("new combination", "An epithet moved under another genus or species, with the same type."),
    ("neotype", "A specimen or figure chosen as type where nothing of the first author’s material is left (ICN"
     " Art. 9)."),
    ("nomen nudum", "A name printed without description or diagnosis, and so not validly published (ICN Art. 38)."),
    ("priority", "Of several names at the same rank, the oldest legitimate one is to be used. At another rank its age"
     " gives it no claim (ICN Art. 11)."),
    ("protologue", "Everything that stands with a name at its first valid publication: words, figures, specimens"
     " cited, places, remarks."),
    ("rank", "The level a name stands at: species, subspecies, variety, form. The Code lets authors choose it; much of"
     " what this site records is authors choosing differently."),
    ("repetition", "On this site: a statement whose figures equal those of an earlier work that its author followed."
     " It shows usage rather than fresh evidence; so far all statements weigh the same here."),
    ("replacement name", "A new epithet for a taxon whose older one may not be used at that rank or in that genus; it"
     " keeps the type of the name it replaces."),
    ("sec.", "According to. Behind a name it says whose sense of the name is meant, whoever published it."),
    ("silent", "On this site: of a work that sets out to treat a group and does not mention a taxon or a character."
     " Silence is neither agreement nor denial."),
    ("superfluous", "Said of a name whose author took in the type of an older name that ought to have been used"
     " instead. It is illegitimate, unless it rests on a legitimate basionym (ICN Art. 52)."),
    ("synonym", "A name that an author holds to mean the same taxon as the accepted one."),
    ("syntype", "Any of several specimens cited with a new name where no holotype was named (ICN Art. 9)."),
    ("trend", "On this site: a bound is said to rise or fall where its order of size follows the order of years,"
     " Kendall’s tau at least 0.6 either way with p at most 0.05. It says nothing of the size of the step."),
    ("type", "The specimen, figure or (for a genus) species that a name is tied to for good. The name goes where its"
     " type goes."),
    ("typical range", "The values between which most plants lie, as a description prints them; rarer extremes stand"
     " in parentheses outside."),
    ("undetermined", "On this site: said where the records do not tell enough for a rule to be applied, or where the"
     " dates leave open which of two names is earlier. What would settle it stands beside it."),
    ("validly published", "Meeting the conditions that make a name exist for the Code at all: a Latin form, a"
     " description or a reference to one, a rank, after certain dates a type and more (ICN Art. 32 to 45)."),
)  # fmt: skip
