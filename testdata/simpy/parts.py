"""Parts of a packaging line as processes of SimPy: an implementation of the rules of the engine that shares
no code with it. Times are whole microseconds. Whoever waits looks again when a neighbour changes.

Left out, because neither line needs it: several feeders or takers of one place, calendar stops, groups of takers.
"""

import math
import random

SECOND = 1_000_000
MINUTE = 60 * SECOND
HOUR = 60 * MINUTE
CYCLE = 1_000_000  # cycle clocks count millionths


def micros(x):
    """Whole microseconds, half of one rounded up, at least one."""
    return max(1, math.floor(x + 0.5))


def fixed(value):
    return lambda rng: micros(value)


def exponential(mean):
    return lambda rng: micros(rng.expovariate(1 / mean))


def lognormal(mean, cv):
    variance = math.log(1 + cv * cv)
    mu = math.log(mean) - variance / 2
    return lambda rng: micros(rng.lognormvariate(mu, math.sqrt(variance)))


class World:
    """The window, and the random streams of one replication. Fixed, if given, has one age and one length for every
    cause of every station: then nothing is random, nothing rejected, every reel is new and nobody elsewhere."""

    def __init__(self, env, seed, replication, warm_up, measure, fixed=None):
        self.env, self.key, self.fixed = env, f"{seed}/{replication}", fixed
        self.begin, self.end = warm_up, warm_up + measure

    def rng(self, *names):
        return random.Random("/".join((self.key,) + names))

    def counts(self):
        return self.begin <= self.env.now < self.end

    def within(self, since):
        return max(0, min(self.env.now, self.end) - max(since, self.begin))


class Place:
    """Places between two stations; pieces fit, or pass straight through to a taker that is ready."""

    def __init__(self, world, capacity, behind=None):
        self.world, self.capacity = world, capacity
        self.level = self.reserved = 0
        self.feeder = self.taker = None
        self.before = behind  # a belt that passes its pieces on into this place

    def fits(self, pieces):
        return self.level + self.reserved + pieces <= self.capacity

    def may_put(self, pieces):
        if self.fits(pieces):
            return True
        t = self.taker
        return (t.ready() and self.level < t.takes <= self.level + pieces
                and self.level + pieces - t.takes <= self.capacity)

    def put(self, pieces):
        self.level += pieces
        self.taker.look()

    def take(self, pieces):
        self.level -= pieces
        if self.before:
            self.before.pass_on()
        self.feeder.look()

    def arrived(self):
        return self.level


class Belt(Place):
    """A belt: its pieces arrive at its end after the transit, and go one by one into the store behind it."""

    def __init__(self, world, capacity, transit, store):
        super().__init__(world, capacity)
        self.transit, self.store, self.at_end = transit, store, 0

    def may_put(self, pieces):
        return self.fits(pieces)

    def put(self, pieces):
        self.level += pieces
        arrival = self.world.env.timeout(self.transit)
        arrival.callbacks.append(lambda _: self.arrive(pieces))

    def arrive(self, pieces):
        self.at_end += pieces
        self.pass_on()

    def pass_on(self):
        moved = min(self.at_end, self.store.capacity - self.store.level)
        if moved > 0:
            self.at_end -= moved
            self.level -= moved
            self.store.put(moved)
            self.feeder.look()


class Group:
    """Stations that stop together, with the open stops of all in the order of their beginning."""

    def __init__(self):
        self.open, self.members = [], []

    def look(self):
        for m in self.members:
            if m.own:
                m.show()  # it waits for its own stop; another may have become the first
            m.look()


class Crew:
    """People who are given out when all of an instant has happened: to who asked first, ties by the name of the
    station and of the cause; other work has no name."""

    def __init__(self, env, people):
        self.env, self.idle, self.queue, self.asked = env, people, [], False

    def request(self, *name):
        return Request(self, name)

    def look(self):
        if not self.asked:
            self.asked = True
            last = self.env.event()
            last.callbacks.append(self.give_out)
            last._ok, last._value = True, None
            self.env.schedule(last, priority=3)

    def give_out(self, _):
        self.asked = False
        self.queue.sort(key=lambda r: (r.at, r.name))
        while self.queue and self.idle:
            self.idle -= 1
            self.queue.pop(0).person.succeed()


class Request:
    def __init__(self, crew, name):
        self.crew, self.name, self.at, self.person = crew, name, crew.env.now, crew.env.event()
        crew.queue.append(self)
        crew.look()

    def __enter__(self):
        return self.person

    def __exit__(self, *_):
        self.crew.idle += 1
        self.crew.look()


class Elsewhere:
    """Other work of one person: it asks for the person like a stop does."""

    def __init__(self, world, crew, share, spell, name):
        self.world, self.crew, rng = world, crew, world.rng(name, "elsewhere")
        self.away = exponential(spell)
        self.gap = exponential(spell * (1 - share) / share)
        if world.fixed:
            return
        world.env.process(self.life(rng, rng.random() < share))

    def life(self, rng, away):
        while True:
            if not away:
                yield self.world.env.timeout(self.gap(rng))
            with self.crew.request() as person:
                yield person
                yield self.world.env.timeout(self.away(rng))
            away = False


class Stop:
    """A cause with its clock: cycles, running time, or a stock of material that is used up."""

    def __init__(self, name, clock, every, lasts, crew=None):
        self.name, self.clock, self.every, self.lasts, self.crew = name, clock, every, lasts, crew
        self.count = 0

    def start(self, world, station):
        self.ages, self.works = world.rng(station, "every", self.name), world.rng(station, "lasts", self.name)
        if world.fixed:
            every, lasts = world.fixed[station][self.name]
            self.every, self.lasts = fixed(every), fixed(lasts)
        self.due = self.age()

    def age(self):
        return self.every(self.ages)

    def strikes(self, duration):
        """Where in a cycle of this duration it strikes; the duration or more if it does not."""
        if self.clock == "cycles":
            return duration * self.due // CYCLE if self.due < CYCLE else duration
        return self.due

    def renew(self, at, duration):
        self.due = self.age() + (self.due if self.clock == "cycles" else at)

    def passed(self, duration):
        self.due -= CYCLE if self.clock == "cycles" else duration


class Stock:
    """A reel or a magazine; a change begins when the rest is too short for a cycle, and adds to it. With an alarm
    it is refilled while the station runs; with a store of web the station draws on that while a splice is made; what
    is prepared after each change must be ready for the next."""

    def __init__(self, name, full, per_cycle, lasts, crew=None, part_used=False, refill=None, alarm=None, store=0,
                 gains=0, scrap=0, prepare=None, prepare_crew=None):
        self.name, self.full, self.per_cycle, self.lasts, self.crew = name, full, per_cycle, lasts, crew
        self.part_used, self.count = part_used, 0
        self.refill, self.alarm, self.scrap = refill or full, alarm, scrap
        self.length, self.store, self.gains = store, store, gains
        self.prepare, self.prepare_crew = prepare, prepare_crew
        self.task = None  # what is under way for it while the station runs

    def start(self, world, station):
        self.works = world.rng(station, "lasts", self.name)
        first = world.rng(station, "part used", self.name)
        self.left = 1 + int(first.random() * self.full) if self.part_used and not world.fixed else self.full
        self.prepares = world.rng(station, "prepare", self.name)
        if world.fixed:
            self.lasts = fixed(world.fixed[station][self.name][1])

    def used_up(self):
        return (self.store if self.length and self.task else self.left) < self.per_cycle

    def tasked(self):
        """It is refilled, or spliced, while the station runs."""
        return self.alarm is not None or self.length > 0

    def asks(self):
        return self.tasked() and self.task is None and self.left <= max(self.alarm or 0, self.per_cycle - 1)

    def passed(self):
        """A cycle has ended: the store gives while the reel is spliced, and is filled by it otherwise."""
        if self.length and self.task:
            self.store -= self.per_cycle
            return
        self.left -= self.per_cycle
        if self.length:
            gained = min(self.gains, self.length - self.store, self.left)
            self.left -= gained
            self.store += gained


class Task:
    """Work for a station that goes on while it runs; a stop may wait for it, and shows how far it is."""

    def __init__(self, station, name, lasts, crew):
        self.station, self.name, self.lasts, self.crew = station, name, lasts, crew
        self.state, self.spell, self.over = "waiting" if crew else "down", None, station.env.event()

    def life(self):
        if self.crew:
            with self.crew.request(self.station.name, self.name) as person:
                yield person
                self.state = "down"
                if self.spell:
                    self.spell["state"] = "down"
                    self.station.group.look()
                    self.station.show()
                yield self.station.env.timeout(self.lasts())
        else:
            yield self.station.env.timeout(self.lasts())
