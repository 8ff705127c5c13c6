"""A small course with a question of every kind, for the tests of marking. Everything in it is invented."""

from __future__ import annotations

from datetime import date

from journeybook.content.model import (
    Approval,
    AssemblyBench,
    Bank,
    BenchPart,
    Block,
    BlockKind,
    Blueprint,
    Calculator,
    CalculatorInput,
    CalculatorResult,
    CardBlock,
    CardBlockKind,
    CardTable,
    Cell,
    ChoiceQuestion,
    ChoicesQuestion,
    Contact,
    Course,
    Covering,
    CriticalFact,
    Deed,
    Drill,
    DrillQuestion,
    Duties,
    Duty,
    FanBench,
    Figure,
    Goal,
    Issuer,
    JobCard,
    Lesson,
    MatchItem,
    MatchQuestion,
    Module,
    Moment,
    NumberQuestion,
    Option,
    OrderQuestion,
    Outcome,
    Outlook,
    PartSize,
    Practical,
    PracticalStep,
    Preset,
    Question,
    Rule,
    SettingQuestion,
    Sheet,
    Slip,
    Stand,
    Term,
    Trial,
    Use,
    Validity,
    Value,
)
from journeybook.content.model.fan_bench import (
    BatteryOfBench,
    ColdShare,
    ControlPlace,
    ControlRange,
    CurvePoint,
    FanControl,
    FanParts,
    FanReading,
    FilterOfBench,
)
from journeybook.diagnostics.problem import Place

HERE = Place(file="course_src/pillar-drill/course.yml")
BANK = Place(file="quizzes/pillar-drill/guard.yml", line=3)


def option(id_: str, text: str, reason: str = "") -> Option:
    return Option(id=id_, text=text, reason=reason, place=BANK)


def isolate(number: int) -> ChoiceQuestion:
    return ChoiceQuestion(
        id=f"isolate-{number}",
        use=Use.CHECK,
        outcome="guard-set",
        level=Outlook.DECIDE,
        critical="isolate-first",
        ask=f"Which comes first before you reach in ({number})?",
        why="The spindle can start while a hand is under it.",
        options=(
            option("a", "Isolate the drill."),
            option("b", "Loosen the collar.", "The spindle can still start."),
            option("c", "Wipe the table.", "The spindle can still start."),
        ),
        right="a",
        place=BANK,
    )


WATCHED = Practical(
    id="guard-watched",
    title="Set the guard",
    intro="The assessor watches.",
    minutes=15,
    safety=("The drill is isolated.",),
    steps=(
        PracticalStep(
            id="close-the-gap",
            text="Close the gap.",
            look_for="At {kit.cutting-speed}, never by eye.",
            critical=True,
            outcome="guard-set",
            sources=("kit",),
            place=HERE,
        ),
    ),
    stop="At once if the spindle turns.",
    place=HERE,
)
CARD = JobCard(
    id="before",
    title="Before you drill",
    when="Each time.",
    sources=("kit",),
    body=(
        CardBlock(kind=CardBlockKind.STEPS, lines=("Isolate.", "Set."), place=HERE),
        CardBlock(
            kind=CardBlockKind.TABLE,
            table=CardTable(columns=("Drill", "Gap"), rows=(("10", ""), ()), place=HERE),
            place=HERE,
        ),
        CardBlock(kind=CardBlockKind.STOP, text="Ask.", place=HERE),
    ),
    place=HERE,
)
DUTIES = Duties(
    id="uk",
    duties=(
        Duty(
            id="nobody-reaches-in",
            text="Nobody reaches in.",
            sources=("manual",),
            covered_by=Covering(
                lessons=("set-guard",),
                questions=("collar-practice",),
                practicals=("close-the-gap",),
                job_cards=("before",),
            ),
            place=HERE,
        ),
    ),
    place=HERE,
)
SPINDLE = Calculator(
    id="spindle-speed",
    title="How fast the spindle may turn",
    intro="From the diameter of the drill.",
    caution="The chart on the machine counts.",
    sources=("manual",),
    inputs=(
        CalculatorInput(
            id="cutting-speed",
            label="Cutting speed",
            unit="m/min",
            start="25",
            choices=(
                Preset(value="25", label="Mild steel", place=HERE),
                Preset(value="60", label="Aluminium", place=HERE),
            ),
            place=HERE,
        ),
        CalculatorInput(
            id="drill", label="Drill", unit="mm", least="1", most="20", start="10", places=1, place=HERE
        ),
    ),
    results=(
        CalculatorResult(
            id="turns",
            label="Speed",
            unit="rpm",
            formula="cutting_speed * 1000 / (3 * drill)",
            places=1,
            note="The next lower one.",
            place=HERE,
        ),
    ),
    place=HERE,
)
ORDER = OrderQuestion(
    id="set-order",
    use=Use.CHECK,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="Put the steps in an order that is safe.",
    why="Any order that keeps the rules is right.",
    steps=(
        option("isolate", "Isolate the drill."),
        option("loosen", "Loosen the collar."),
        option("slide", "Slide the sleeve down."),
        option("tighten", "Tighten the collar."),
        option("start", "Start the drill."),
    ),
    rules=(
        Rule(first="isolate", then=("loosen",), critical=True, reason="It could start.", place=BANK),
        Rule(first="loosen", then=("slide",), reason="The sleeve would bind.", place=BANK),
        Rule(first="slide", then=("tighten",), reason="It would stay up.", place=BANK),
        Rule(first="tighten", then=("start",), reason="It would shake loose.", place=BANK),
    ),
    place=BANK,
)
SEVERAL = ChoicesQuestion(
    id="guard-several",
    use=Use.CHECK,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="Which of these send a guard back to the store?",
    why="A guard that lets a finger through is no guard.",
    options=(
        option("crack", "A crack across the sleeve"),
        option("dust", "Dust on the sleeve", "Wipe it off."),
        option("screw", "A missing screw"),
        option("bent", "A bent collar"),
        option("old", "A faded label", "Order a label."),
    ),
    right=("crack", "screw", "bent"),
    place=BANK,
)
MATCH = MatchQuestion(
    id="parts-match",
    use=Use.CHECK,
    outcome="speed-set",
    level=Outlook.RECALL,
    ask="What does each part do?",
    items=(
        MatchItem(id="collar", text="Collar", goes_with="holds", reason="It clamps.", place=BANK),
        MatchItem(id="sleeve", text="Sleeve", goes_with="covers", reason="It slides.", place=BANK),
    ),
    answers=(
        option("holds", "Holds the guard"),
        option("covers", "Covers the bit"),
        option("cools", "Cools the bit", "Nothing here cools."),
    ),
    place=BANK,
)
SPEED = NumberQuestion(
    id="speed-number",
    use=Use.CHECK,
    outcome="speed-set",
    level=Outlook.APPLY,
    ask="A {d} mm bit may cut at {v} m/min. How fast may the spindle turn? Take 3.14 for pi.",
    why="{v} m/min over a circumference of 3.14 times {d} mm.",
    right="v * 1000 / (3.14 * d)",
    tolerance="3 %",
    unit="rpm",
    unit_needed=False,
    given=({"d": "10", "v": "{kit.cutting-speed}"}, {"d": "6", "v": "{kit.cutting-speed}"}),
    slips=(Slip(value="v * 1000 / d", reason="That leaves out pi.", place=BANK),),
    place=BANK,
)
HEIGHT = NumberQuestion(
    id="height-number",
    use=Use.CHECK,
    outcome="speed-set",
    level=Outlook.APPLY,
    ask="How far above the work does the sleeve end?",
    right="6",
    tolerance="1",
    unit="mm",
    units=("cm", "in"),
    unit_needed=True,
    place=BANK,
)
PRACTICE = ChoiceQuestion(
    id="collar-practice",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.RECALL,
    ask="Which part holds the guard?",
    why="The collar clamps to the quill.",
    options=(option("a", "The collar"), option("b", "The chuck key", "It tightens the bit.")),
    right="a",
    keep_order=True,
    place=BANK,
)


DRILL = Drill(
    id="drill-jams",
    title="The drill jams",
    sources=("kit",),
    figure="guard",
    situation="You open up a hole at {kit.cutting-speed}.",
    start="jam",
    moments=(
        Moment(
            id="jam",
            text="It sticks.",
            seconds=8,
            late="hold",
            deeds=(
                Deed(id="stop", text="Hit the stop", leads_to="still", told="It runs down.", place=BANK),
                Deed(id="lift", text="Lift it", leads_to="still", penalty=400, told="Late.", place=BANK),
                Deed(id="hold", text="Hold on", critical="It breaks the wrist.", place=BANK),
            ),
            place=BANK,
        ),
        Moment(id="still", text="All stands still.", worth=1000, place=BANK),
    ),
    place=BANK,
)
JAM = DrillQuestion(
    id="jam-drill",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="The drill jams. What do you do?",
    drill="drill-jams",
    place=BANK,
)


MOUTH = FanBench(
    id="mouth",
    title="The extraction",
    intro="Let the bag fill.",
    caution="A model.",
    sources=(),
    example=True,
    flow_unit="m3/h",
    fan=(
        CurvePoint(flow="0", pressure="1200", place=HERE),
        CurvePoint(flow="1000", pressure="0", place=HERE),
    ),
    filter=FilterOfBench(clean="0.3", full="1.5", place=HERE),
    duct="0.0008",
    efficiency="45",
    standby="2",
    churning="40",
    least_speed="10",
    battery=BatteryOfBench(
        energy="37",
        alarm="5",
        cold=(ColdShare(at="0", gives="80", place=HERE), ColdShare(at="20", gives="100", place=HERE)),
        place=HERE,
    ),
    alarm_below="540",
    alarm_name="Lamp",
    parts=FanParts(inlet="Mouth", filter="Bag", fan="Fan", duct="Pipe", outlet="Roof"),
    fixed=Stand(setting="2000", height="0"),
    controls=(
        FanControl(
            of="load",
            label="Dust",
            unit="%",
            range=ControlRange(least="0", most="100", step="20", place=HERE),
            start="0",
            place=HERE,
        ),
        FanControl(
            of="opening",
            label="Gate",
            places=(
                ControlPlace(id="shut", value="0", label="shut", place=HERE),
                ControlPlace(id="open", value="100", label="open", place=HERE),
            ),
            start="open",
            place=HERE,
        ),
    ),
    readings=(FanReading(of="flow", label="Taken", unit="m3/h", places=1, place=HERE),),
    place=HERE,
)
FILL = SettingQuestion(
    id="fill-the-bag",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="Fill the bag until the lamp comes on.",
    trial=Trial(bench="mouth", start=Stand(load="0"), moves=("load",), place=BANK),
    goals=(Goal(of="flow", below="400", place=BANK),),
    first="load",
    place=BANK,
)

GUARD_ON = AssemblyBench(
    id="guard-on",
    title="Put the guard on",
    intro="The collar stands there.",
    caution="Practice on a drawing.",
    sources=("manual",),
    example=True,
    parts=(
        BenchPart(
            id="collar", name="Collar", shape="ring", size=PartSize(wide=60, high=20, place=HERE), place=HERE
        ),
        BenchPart(id="isolate", name="Isolate", shape="deed", place=HERE),
        BenchPart(
            id="sleeve",
            name="Sleeve",
            step="Push the sleeve in",
            shape="tube",
            look="ribs",
            size=PartSize(wide=50, high=90, deep=50, place=HERE),
            joins="collar",
            side="below",
            shift=2,
            into=8,
            place=HERE,
        ),
    ),
    rules=(Rule(first="isolate", then=("sleeve",), critical=True, reason="It could start.", place=HERE),),
    place=HERE,
)


def course(*, version: str = "1.0", questions: tuple[Question, ...] | None = None) -> Course:
    """The course; with other questions where a test wants to see what a change does."""
    every: tuple[Question, ...] = (
        isolate(1),
        isolate(2),
        ORDER,
        SEVERAL,
        MATCH,
        SPEED,
        HEIGHT,
        PRACTICE,
        JAM,
    )
    return Course(
        id="pillar-drill",
        title="Set the guard on a pillar drill",
        summary="How to set the guard.",
        version=version,
        languages=("en",),
        equipment="Pillar drill with telescopic guard",
        issuer=Issuer(name="Quillon Basin Works", location="Basin Lane"),
        contact=Contact(name="T. Marrable", role="training lead", reach="the office by the slip"),
        approved=Approval(by="T. Marrable", on=date(2026, 11, 20)),
        validity=Validity(months=12, grounds="Yearly."),
        outcomes=(
            Outcome(id="guard-set", text="Set the guard.", place=HERE),
            Outcome(id="speed-set", text="Set the speed.", place=HERE),
        ),
        critical_facts=(
            CriticalFact(
                id="isolate-first", text="Isolate first.", why="It can start.", sources=(), place=HERE
            ),
        ),
        cautions=("Training aid. The maker's instructions come first.",),
        certificate_limits=("medical fitness",),
        modules=(
            Module(
                id="guard",
                operation=20,
                title="The guard",
                summary="Collar and sleeve.",
                lessons=(
                    Lesson(
                        id="set-guard",
                        title="Set the guard",
                        minutes=4,
                        outcomes=("guard-set",),
                        sources=("kit",),
                        body=(
                            Block(
                                kind=BlockKind.TEXT, text="The {word.collar} holds the sleeve.", place=HERE
                            ),
                            Block(kind=BlockKind.STEPS, steps=("Isolate.", "Loosen."), place=HERE),
                            Block(kind=BlockKind.FIGURE, text="guard", place=HERE),
                        ),
                        practice=("collar-practice",),
                        place=HERE,
                    ),
                ),
                place=HERE,
            ),
        ),
        kit=Sheet(
            id="kit",
            title="Kit sheet",
            values={
                "cutting-speed": Value(
                    id="cutting-speed",
                    label="Cutting speed",
                    value="25",
                    unit="m/min",
                    example=True,
                    place=HERE,
                )
            },
            place=HERE,
        ),
        profile=Sheet(id="uk", title="United Kingdom", values={}, place=HERE),
        sources={},
        terms={"collar": Term(id="collar", word="collar", meaning="The clamp.", place=HERE)},
        figures={
            "guard": Figure(
                id="guard", title="The guard", alt="A sleeve below a collar.", svg="<svg></svg>", place=HERE
            )
        },
        banks=(
            Bank(id="guard", title="Guard", questions=every if questions is None else questions, place=BANK),
        ),
        check=Blueprint(
            title="Competence check",
            percent=80,
            grounds="The shop's rule.",
            minutes=10,
            cells=(
                Cell(outcome="guard-set", level=Outlook.APPLY, draw=2, place=HERE),
                Cell(outcome="speed-set", level=Outlook.RECALL, draw=1, place=HERE),
                Cell(outcome="speed-set", level=Outlook.APPLY, draw=1, place=HERE),
            ),
            place=HERE,
        ),
        drills={DRILL.id: DRILL},
        practicals={WATCHED.id: WATCHED},
        job_cards={CARD.id: CARD},
        duties=DUTIES,
        calculators={SPINDLE.id: SPINDLE},
        benches={GUARD_ON.id: GUARD_ON, MOUTH.id: MOUTH},
        place=HERE,
    )
