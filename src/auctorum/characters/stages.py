"""Growth stages named in a phrase: which stage each token stands under.

Words of the trade (common practice, no source): a marker rules its clause, and the clauses after it when it stands
before the value (`adult leaves 8 cm long, 2 cm wide`); `becoming` parts young from old.
"""

from __future__ import annotations

from auctorum.characters.figures import Line
from auctorum.characters.tokens import Sort
from auctorum.characters.wording import phrases

_MARKERS = {
    "young": "when young,while young,if young,young,at first,initially,juvenile,immature,in youth,when juvenile,"
    "when immature,immaturus,immatura,immaturum,immaturi,immaturae,in bud,on young growth,on new growth,in the young state,youngest,"
    "juvenculus,juvenculis,juvencula,junior,juniora,juniores,junioribus,primum,primo,first,novellus,novella,novellis,"
    "novelli,novellae,juventute,in juventute,statu juvenili,juvenilis,juvenilia,juvenilibus,juveniles,juvenis,"
    "jung,junge,jungen,anfangs,in der jugend,joven,jovenes,de joven,de jovenes,cuando jovenes,cuando joven,jovem,jovens,"
    "primero,al principio,inicialmente,no inicio,dapprima,inizio,zuerst,primeiro,"
    "quando jovem,quando jovens,jeune,jeunes,abord,juveniles,da giovane,giovane,giovani",
    "old": "in age,with age,at length,when old,in old age,old,later,afterwards,ultimately,finally,eventually,demum,"
    "tandem,aged,with age becoming,at last,older,late,in time,when aged,at age,senectute,in senectute,aetate,vetustus,"
    "vetusta,vetustiora,adultiora,im alter,spater,zuletzt,con la edad,al envejecer,com a idade,depois,mais tarde,por fim,despues,luego,finalmente,infine,ensuite,plus tard,puis,enfin,dann,"
    "avec age,a la fin,"
    "con eta,vieux,viejo,viejos,viejas,vecchi,vecchio",
    "mature": "adult,mature,when mature,at maturity,in maturity,ripe,when ripe,fully grown,full grown,adultus,adulta,"
    "adultum,adultis,adulti,maturus,matura,maturum,maturis,maturitate",
    "flower": "in flower,at anthesis,during anthesis,flowering,when flowering,at flowering,sub anthesi,in anthesi,"
    "in bloom,at flowering time,in full flower,at time of flowering,tempore florendi,sub anthesin,ad anthesin,"
    "florifer,florifera,floriferi,floriferis,zur blutezeit,en la antesis,en antesis,en flor,na antese,em flor,a anthese,"
    "in fiore,antesi",
    "fruit": "in fruit,at fruiting,when fruiting,fruiting,in fructu,fructifer,fructifera,fructiferum,fructiferi,"
    "fructiferis,fructifero,fructiferae,fructigerus,fructu maturo,sub fructu,zur fruchtzeit,fruchtend,en fruto,"
    "en la fructificacion,fructiferos,em fruto,frutifero,frutiferos,na frutificacao,en fruit,a la fructification,in frutto,"
    "when in fruit,at fruiting time,in fruiting state",
    "dry": "when dry,if dry,dry,dried,drying,when dried,on drying,in sicco,siccus,sicca,siccum,siccis,siccitate,"
    "in the dry state,in dry state,in dried specimens,in herbarium specimens,trocken,getrocknet,en seco,seco,seca,secos,"
    "secas,quando seco,quando secos,quando secas,a sec,sec,seche,in secco",
    "fresh": "when fresh,fresh,in fresh state,in the fresh state,in vivo,in life,when living,en vivo,frisch,fresco,frescos",
}
_BECOMING = (
    "becoming,become,turning,turning to,changing to,changing,fading to,fading,ageing,aging,ageing to,aging to,becomes,"
    "turns,turns to,turn,fades to,fades,soon,at length becoming,later becoming,finally becoming,soon becoming,then,then "
    "becoming,changing with age to,turning with age,becoming with age,with age becoming,passing to,passing into,mox,dein,"
    "deinde,postea,denique,wilting to,withering to,maturing,maturing to,ripening,ripening to,ripening through,but soon,"
    "at length turning,werdend,spater werdend,tornandose,volviendose,tornando-se,devenant,passant au,passant a,diventando,"
    "weathering,weathering to,darkening to,eventually becoming,ultimately becoming,afterwards becoming,gradually becoming"
)
_STAGE_OF = {tuple(marker.split()): stage for stage, several in _MARKERS.items() for marker in several.split(",")} | {
    tuple(marker.split()): "becoming" for marker in _BECOMING.split(",")
}
_TABLE = phrases(*(" ".join(words) for words in _STAGE_OF))


def stage_mark(line: Line, at: int) -> tuple[str, int]:
    """The stage that the words here mark (`becoming` for a change), and the place after them; empty and `at` if none."""
    words = _found(line, at)
    return (_STAGE_OF[words], at + len(words)) if words else ("", at)


def _found(line: Line, at: int) -> tuple[str, ...]:
    """The longest marker that starts here; empty if none does."""
    for words in _TABLE.get(line.text(at), ()):
        if all(line.text(at + step) == word for step, word in enumerate(words)):
            return words
    return ()
