"""The words that mark a growth stage or condition, and those that tell a change (common practice, no source).

English first, then Latin, German, Spanish, Portuguese, French, Italian. Words are folded: no case, no accents.
"""

from __future__ import annotations

from collections.abc import Mapping

_MARKERS = {
    "young": """
        when young, while young, if young, young, younger, youngest, at first, initially, juvenile, immature, in youth,
        when juvenile, when immature, in bud, on young growth, on new growth, in the young state, first,
        juvenculus, juvenculis, juvencula, junior, juniora, juniores, junioribus, juniorum, primum, primo, novellus,
        novella, novellis, novelli, novellae, juventute, in juventute, statu juvenili, juvenilis, juvenilia,
        juvenilibus, juveniles, juvenis, immaturus, immatura, immaturum, immaturi, immaturae, immaturis, initio,
        jung, junge, jungen, anfangs, in der jugend, in der knospe, zuerst, unreif,
        joven, jovenes, de joven, de jovenes, en el boton, en boton, cuando joven,
        cuando jovenes, primero, al principio, inicialmente,
        jovem, jovens, quando jovem, quando jovens, no inicio, primeiro, quando novo, quando novos,
        jeune, jeunes, en bouton, abord, a etat jeune, da giovane, giovane, giovani, dapprima, all'inizio""",
    "old": """
        in age, with age, at length, when old, in old age, old, older, later, afterwards, ultimately, finally,
        eventually, aged, when aged, at last, late, in time, at age, with age becoming, later on,
        demum, tandem, senectute, in senectute, aetate, vetustus, vetusta, vetustiora, adultiora, serius,
        im alter, spater, zuletzt, schliesslich, con la edad, al envejecer, despues, luego, finalmente,
        com a idade, depois, mais tarde, por fim, avec age, a la fin, ensuite, plus tard, puis, enfin,
        con eta, infine, poi, vieux, viejo, viejos, viejas, vecchi, vecchio, velho, velhos, velhas""",
    "mature": """
        adult, mature, when mature, at maturity, in maturity, ripe, when ripe, fully grown, full grown, full-grown,
        fully mature, when full grown, when fully grown, when adult, in the mature state, at full maturity,
        adultus, adulta, adultum, adultis, adulti, adultae, maturus, matura, maturum, maturis, maturi, maturae,
        maturitate, in maturitate, sub maturitate, in statu maturo,
        reif, reife, reifen, bei der reife, zur reife, ausgewachsen, ausgewachsene,
        maduro, madura, maduros, maduras, en la madurez, a la madurez, al madurar, adulto, adultos, adultas,
        na maturidade, quando maduro, quando maduros, quando madura, quando maduras, mur, mure, murs, mures,
        a maturite, adulte, adultes, maturo, maturi, a maturita""",
    "flower": """
        in flower, at anthesis, during anthesis, flowering, when flowering, at flowering, in bloom, at flowering time,
        in full flower, at time of flowering, when in flower,
        sub anthesi, in anthesi, tempore florendi, sub anthesin, ad anthesin, florifer, florifera, floriferi,
        floriferis, sub florescentia, zur blutezeit, bluhend, en la antesis, en antesis, en flor, na antese,
        em flor, a anthese,
        en fleur, in fiore, antesi""",
    "fruit": """
        in fruit, at fruiting, when fruiting, fruiting, when in fruit, at fruiting time, in the fruiting state,
        in fructu, fructifer, fructifera, fructiferum, fructiferi, fructiferis, fructifero, fructiferae, fructigerus,
        fructu maturo, sub fructu, statu fructifero, zur fruchtzeit, fruchtend, en fruto, en la fructificacion,
        fructiferos, em fruto, frutifero, frutiferos, na frutificacao, en fruit, a la fructification, in frutto""",
    "dry": """
        when dry, if dry, dry, dried, drying, when dried, on drying, in the dry state, in dry state,
        in dried specimens, in herbarium specimens, in sicco, siccus, sicca, siccum, siccis, siccitate, siccitate,
        trocken, getrocknet, en seco, seco, seca, secos, secas, quando seco, quando secos, quando secas, a sec, sec,
        seche, seches, in secco""",
    "fresh": """
        when fresh, fresh, in fresh state, in the fresh state, in life, when living, in vivo, en vivo, frisch, fresco,
        frescos, quando fresco, a etat frais""",
}
_BECOMING = """
    becoming, become, turning, turning to, changing to, changing, fading to, fading, ageing, aging, ageing to,
    aging to, becomes, turns, turns to, turn, fades to, fades, soon, at length becoming, later becoming,
    finally becoming, soon becoming, then, then becoming, changing with age to, turning with age, becoming with age,
    with age becoming, passing to, passing into, wilting to, withering to, maturing, maturing to, ripening,
    ripening to, ripening through, but soon, at length turning, weathering, weathering to, darkening to,
    eventually becoming, ultimately becoming, afterwards becoming, gradually becoming, drying to,
    mox, dein, deinde, postea, denique, werdend, spater werdend, tornandose, volviendose, tornando-se, devenant,
    passant au, passant a, diventando"""


def _listed(words: str) -> list[tuple[str, ...]]:
    return [tuple(marker.split()) for marker in words.split(",")]


STAGE_OF: Mapping[tuple[str, ...], str] = {
    **{marker: stage for stage, words in _MARKERS.items() for marker in _listed(words)},
    **dict.fromkeys(_listed(_BECOMING), "becoming"),
}
"""The stage that a marker names, `becoming` for the words of a change."""
