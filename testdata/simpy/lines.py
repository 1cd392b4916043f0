"""The two lines: REF, the reference line, and Lowmere, as testdata/reference-line.yaml and
scenarios/lowmere.yaml describe them."""

import math

import simpy

from parts import (CYCLE, HOUR, MINUTE, SECOND, Belt, Crew, Elsewhere, Group, Place, Stock, Stop, World, exponential,
                   fixed, lognormal)
from station import Station


def link(feeder, place, taker, into=None):
    """feeder puts into place, taker takes from it, or from what the place passes its pieces on into."""
    feeder.next, place.feeder = place, feeder
    last = into or place
    taker.source, last.taker = last, taker
    if into:
        into.feeder = feeder


def reference(world):
    web = Station(
        world, "web", 600_000, gives=4, rejects=0.004, scrap_after_stop=6,
        stops=[
            Stop("minor stop", "running", exponential(20 * MINUTE), lognormal(90 * SECOND, 0.8)),
            Stop("breakdown", "running", exponential(90 * MINUTE), lognormal(6 * MINUTE, 1)),
            Stop("reel", "running", fixed(45 * MINUTE), fixed(120 * SECOND)),
        ])
    cartoner = Station(
        world, "cartoner", 480_000, takes=2, rejects=0.003,
        stops=[Stop("minor stop", "running", exponential(12 * MINUTE), lognormal(45 * SECOND, 0.7))],
        stocks=[Stock("blanks", 3000, 1, fixed(20 * SECOND))])
    packer = Station(
        world, "packer", 400_000, every=12, adds=3 * SECOND,
        stops=[Stop("minor stop", "running", exponential(60 * MINUTE), lognormal(4 * MINUTE, 1))])
    link(web, Place(world, 400), cartoner)
    link(cartoner, Place(world, 30), packer)
    return [web, cartoner, packer], packer


def usable(outer, core, thickness, rest):
    """Metres of web on a reel, in micrometres; outer, core and thickness in mm, the rest in m."""
    return round((math.pi * (outer**2 - core**2) / 4 / thickness / 1000 - rest) * 1e6)


def lowmere(world):
    operators = Crew(world.env, 3)
    technicians = Crew(world.env, 1)
    Elsewhere(world, technicians, 0.5, 20 * MINUTE, "technicians")
    store = Place(world, 720)
    belt = Belt(world, 129, 20 * SECOND, store)
    store.before = belt
    group = Group()
    blister = Station(
        world, "blister machine", SECOND, gives=4, rejects=0.008, before=True, ramp=15 * SECOND,
        scrap_after_standstill=(MINUTE, 8), restart=((belt, store), 504),
        stops=[
            Stop("minor stop", "cycles", exponential(1500 * CYCLE), lognormal(2 * MINUTE, 0.9), operators),
            Stop("breakdown", "cycles", exponential(28800 * CYCLE), exponential(25 * MINUTE), technicians),
        ],
        stocks=[
            Stock("forming foil", usable(600, 76, 0.250, 12), 132_000, fixed(4 * MINUTE), operators, True),
            Stock("lidding foil", usable(300, 76, 0.027, 10), 132_000, fixed(3.5 * MINUTE), operators, True),
            Stock("tablets", 80_000, 40, fixed(2 * MINUTE), operators, True, refill=68_000, alarm=12_000),
        ])
    cartoner = Station(
        world, "cartoner", 750_000, takes=3, rejects=0.004, group=group, start=144,
        fast={"from": 360, "back": 288, "cycle": 600_000},
        stops=[
            Stop("minor stop", "cycles", exponential(1000 * CYCLE), lognormal(1.5 * MINUTE, 0.8), operators),
            Stop("breakdown", "cycles", exponential(36000 * CYCLE), exponential(18 * MINUTE), technicians),
        ],
        stocks=[
            Stock("carton blanks", 2000, 1, fixed(0.7 * MINUTE), operators, True, refill=500, alarm=500),
            Stock("leaflets", 800, 1, fixed(0.5 * MINUTE), operators, True, refill=400, alarm=300),
        ])
    check = Station(
        world, "print-and-check", round(MINUTE / 110), group=group,
        stops=[Stop("end-of-line stop", "cycles", exponential(2500 * CYCLE), lognormal(1.2 * MINUTE, 0.8), operators)])
    label = Station(world, "tamper label", round(MINUTE / 115), group=group)
    bundler = Station(world, "bundler", 5 * SECOND, takes=10, group=group)
    packer = Station(world, "case packer", 48 * SECOND, takes=10, group=group)
    link(blister, belt, cartoner, store)
    link(cartoner, Place(world, 0), check)
    link(check, Place(world, 0), label)
    link(label, Place(world, 9), bundler)
    link(bundler, Place(world, 9), packer)
    return [blister, cartoner, check, label, bundler, packer], label


def stock(s, fitter):
    return Stock(
        s["name"], s["full"], s["per_cycle"], fixed(s["lasts"]), s["crew"] and fitter or None, refill=s["refill"],
        alarm=s["alarm"], store=s["store"], gains=s["gains"], scrap=s["scrap"],
        prepare=s["prepare"] and fixed(s["prepare"]) or None, prepare_crew=s["prepare_crew"] and fitter or None)


def described(case):
    """A serial line as a case describes it; nothing in it is random. Stations of one group stop together, and one
    person does the work of all stops with a crew."""

    def build(world):
        fitter, groups, stations = Crew(world.env, 1), {}, []
        for d in case["stations"]:
            stations.append(Station(
                world, d["name"], d["cycle"], takes=d["takes"], gives=d["gives"], before=d["before"], every=d["every"],
                adds=d["adds"], ramp=d["ramp"], scrap_after_stop=d["after_stop"], scrap_after_standstill=d["standstill"],
                group=groups.setdefault(d["group"] or d["name"], Group()),
                stops=[Stop(s["name"], s["clock"], fixed(s["every"]), fixed(s["lasts"]), s["crew"] and fitter or None)
                       for s in d["stops"]],
                stocks=[stock(s, fitter) for s in d["stocks"]]))
        for feeder, p, taker in zip(stations, case["places"], stations[1:]):
            place = Place(world, p["holds"])
            if p["transit"]:
                belt = Belt(world, p["belt"], p["transit"], place)
                place.before = belt
                link(feeder, belt, taker, place)
            else:
                link(feeder, place, taker)
            counted = (belt, place) if p["transit"] else (place,)
            feeder.restart = (counted, p["restart"]) if p["restart"] is not None else None
            taker.start_level = p["start"]
            if p["from"]:
                taker.fast = {"from": p["from"], "back": p["back"], "cycle": p["fast"]}
        return stations, stations[-1]

    return build, case["warm_up"], case["measure"]


WINDOWS = {"reference": (reference, HOUR, 8 * HOUR), "lowmere": (lowmere, 2 * HOUR, 8 * HOUR)}


def replicate(name, seed, replication, case=None):
    build, warm_up, measure = described(case) if name == "described" else WINDOWS[name]
    fixed = None if name == "described" else case
    env = simpy.Environment()
    world = World(env, seed, replication, warm_up, measure, fixed)
    stations, counted = build(world)
    env.run(until=warm_up + measure)
    out = {"output": counted.passed, "states": {}, "stops": {}}
    for s in stations:
        s.account()
        out["states"][s.name] = {state: t for state, t in sorted(s.times.items()) if t > 0}
        out["stops"][s.name] = {part.name: part.count for part in s.stops + s.stocks}
    return out
