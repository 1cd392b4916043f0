"""A station as one process: it waits for input and room, works its cycles, stops, and hands over."""

import math

from parts import Group, Task, micros


class Station:
    def __init__(self, world, name, cycle, takes=1, gives=1, rejects=0.0, stops=(), stocks=(), before=False,
                 every=0, adds=0, ramp=0, scrap_after_stop=0, scrap_after_standstill=(0, 0),
                 fast=None, restart=None, start=None, group=None):
        self.world, self.env, self.name = world, world.env, name
        self.cycle, self.takes, self.gives, self.rejects = cycle, takes, gives, 0 if world.fixed else rejects
        self.stops, self.stocks, self.before = list(stops), list(stocks), before
        self.every, self.adds, self.ramp = every, adds, ramp
        self.scrap_after_stop, self.scrap_after_standstill = scrap_after_stop, scrap_after_standstill
        self.fast, self.restart, self.start_level = fast, restart, start
        self.source = self.next = None
        self.group = group or Group()
        self.group.members.append(self)
        self.wake, self.phase, self.own = None, "idle", False
        self.state, self.since, self.times = "starved", 0, {}
        self.rested, self.scrap, self.fast_on, self.count = None, 0, False, 0
        self.ramped = None  # work done on the ramp, None at set speed
        self.passed = 0
        self.room_lacks = False
        self.rng = world.rng(name, "rejects")
        for part in self.stops + self.stocks:
            part.start(world, name)
        self.env.process(self.life())

    # What neighbours see.

    def up(self):
        return not self.group.open

    def ready(self):
        return self.phase == "idle" and self.up() and not self.own and not self.used_up() and self.has_room()

    def look(self):
        if self.wake is not None and not self.wake.triggered:
            self.wake.succeed()

    # States.

    def now_state(self):
        if self.phase == "working" and not self.own:
            return "running"
        if self.group.open:
            return self.group.open[0]["state"]
        return "blocked" if self.phase == "holding" or self.room_lacks else "starved"

    def show(self):
        state = self.now_state()
        if state != self.state:
            self.account()
            self.state = state

    def account(self):
        self.times[self.state] = self.times.get(self.state, 0) + self.world.within(self.since)
        self.since = self.env.now

    def until(self, condition):
        while not condition():
            self.show()
            self.wake = self.env.event()
            yield self.wake
            self.wake = None

    # Its life.

    def life(self):
        self.look_at_stocks()
        while True:
            stock = self.used_up()
            if stock:
                yield from self.stand(stock)
                if not stock.tasked():
                    self.changed(stock)
                continue
            yield from self.wait_to_start()
            good = yield from self.work()
            if good:
                yield from self.hand_over(good)

    def used_up(self):
        return next((s for s in self.stocks if s.used_up()), None)

    # What somebody does while it runs.

    def look_at_stocks(self):
        for s in self.stocks:
            if s.asks():
                s.task = Task(self, s.name, lambda s=s: s.lasts(s.works), s.crew)
                self.env.process(self.refill(s))

    def refill(self, stock):
        task = stock.task
        yield from task.life()
        stock.task = None
        self.changed(stock)
        task.over.succeed()
        self.look_at_stocks()
        self.look()

    def prepare(self, stock):
        yield from stock.task.life()
        task, stock.task = stock.task, None
        task.over.succeed()

    def changed(self, stock):
        stock.left += stock.refill
        self.scrap = max(self.scrap, stock.scrap)
        if stock.prepare is not None:
            stock.task = Task(self, stock.name, lambda: stock.prepare(stock.prepares), stock.prepare_crew)
            self.env.process(self.prepare(stock))

    def wait_for(self, task, spell):
        """A stop waits for a task that is under way."""
        spell["state"], task.spell = task.state, spell
        self.group.look()
        self.show()
        yield task.over

    def has_input(self):
        return self.source is None or self.source.arrived() >= self.takes

    def has_room(self):
        return not self.before or self.scrap > 0 or self.next.fits(self.gives)

    def wait_to_start(self):
        """Input and room are there and no stop is open: take the input, reserve the room."""
        lacked = -1 if self.rested is None else None  # since when it lacks input; a new station lacked it before
        blocked, self.released, self.startable = None, False, False
        while True:
            self.room_lacks = False
            if self.up():
                if not self.has_input():
                    blocked, lacked = None, self.env.now if lacked is None else lacked
                    self.show()
                elif not self.starts(lacked):
                    self.show()
                else:
                    if blocked is None:
                        blocked = self.env.now
                    if self.before and self.scrap > 0 or self.restarts(blocked) and self.has_room():
                        break
                    self.room_lacks = True
                    self.show()
            else:
                self.show()
            if self.source is not None and not self.has_input():
                self.source.feeder.look()  # a piece may pass straight through
            self.wake = self.env.event()
            yield self.wake
            self.wake = None
        self.begin()

    def begin(self):
        self.phase, self.room_lacks = "working", False
        self.reserved = self.gives if self.before and self.scrap == 0 else 0
        if self.reserved:
            self.next.reserved += self.reserved
        self.duration = self.cycle
        if self.fast:
            level = self.source.level
            if level >= self.fast["from"]:
                self.fast_on = True
            elif level <= self.fast["back"]:
                self.fast_on = False
            if self.fast_on:
                self.duration = self.fast["cycle"]
        if self.source is not None:
            self.source.take(self.takes)

    def stood(self):
        """Work goes on after a pause: scrap after a standstill, and the ramp."""
        pause = 0 if self.rested is None else self.env.now - self.rested
        limit, cycles = self.scrap_after_standstill
        if cycles and pause > limit:
            self.scrap = max(self.scrap, cycles)
        if self.ramp and pause > self.cycle:
            self.ramped = 0.0

    def ramp_time(self, work):
        """When so much work is done after a standstill: the speed rises in a straight line."""
        r = self.ramp
        return math.sqrt(2 * r * work) if work <= r / 2 else work + r / 2

    def ramp_work(self, time):
        r = self.ramp
        return time * time / (2 * r) if time <= r else time - r / 2

    def work(self):
        """One cycle with its stops; returns the good pieces."""
        work = self.duration + (self.adds if self.every and (self.count + 1) % self.every == 0 else 0)
        self.stood()
        base, at = self.ramped, 0
        duration = self.on_ramp(work)
        while True:
            struck = min(self.stops, key=lambda s: (max(at, s.strikes(duration)), s.name), default=None)
            where = duration if struck is None else min(duration, max(at, struck.strikes(duration)))
            if where > at:
                self.show()
                yield self.env.timeout(where - at)
                self.rested = self.env.now
                if base is not None:
                    done = self.ramp_work(self.ramp_time(base) + where - at) - base
                    base += done
                    work -= done
                else:
                    work -= where - at
                at = where
            if at == duration:
                break
            struck.renew(at, duration)
            yield from self.stand(struck)
            standing = self.env.now - self.rested if self.rested is not None else 0
            self.stood()
            if self.ramp and standing > self.cycle:
                base = 0.0
                duration = at + self.on_ramp(micros(work))
        return self.finish(duration)

    def on_ramp(self, work):
        """How long work takes from where the ramp stands; rounded once."""
        if self.ramped is None:
            return work
        begun, self.ramped = self.ramp_time(self.ramped), self.ramped + work
        lasts = micros(self.ramp_time(self.ramped) - begun)
        if self.ramped >= self.ramp / 2:
            self.ramped = None
        return lasts

    def finish(self, duration):
        self.count += 1
        self.phase = "idle"
        for s in self.stops:
            s.passed(duration)
        for s in self.stocks:
            s.passed()
        self.look_at_stocks()
        good = self.gives
        if self.scrap > 0:
            self.scrap -= 1
            good = 0
        else:
            good -= sum(self.rng.random() < self.rejects for _ in range(self.gives)) if self.rejects else 0
        if self.reserved:
            self.next.reserved -= self.reserved
        return good

    def stand(self, cause):
        """A stop: it waits for its crew, then is worked on; the group stands with it."""
        begun = self.env.now
        if self.world.counts():
            cause.count += 1
        spell = {"state": "waiting" if cause.crew else "down"}
        self.own = True
        self.group.open.append(spell)
        self.group.look()
        self.show()
        task = getattr(cause, "task", None)
        if task:
            yield from self.wait_for(task, spell)
            spell["state"] = "waiting" if cause.crew else "down"
        if task and cause.tasked():
            pass  # the task has done it
        elif cause.crew:
            self.group.look()
            self.show()
            with cause.crew.request(self.name, cause.name) as person:
                yield person
                spell["state"] = "down"
                self.group.look()
                self.show()
                yield self.env.timeout(cause.lasts(cause.works))
        else:
            yield self.env.timeout(cause.lasts(cause.works))
        self.group.open[:] = [s for s in self.group.open if s is not spell]
        self.own = False
        self.group.look()
        if self.scrap_after_stop and self.env.now > begun:
            self.scrap = max(self.scrap, self.scrap_after_stop)
        self.show()

    def restarts(self, blocked):
        """A restart level lets it go: it has not been blocked, or the level has been reached since."""
        if self.restart and blocked < self.env.now and not self.released:
            self.after_all("released", lambda: sum(p.level for p in self.restart[0]) <= self.restart[1])
            return self.released
        return True

    def starts(self, lacked):
        """A start level lets it go: it has not been starved, or the level has been reached since."""
        if self.start_level is not None and lacked is not None and lacked < self.env.now and not self.startable:
            self.after_all("startable", lambda: self.source.arrived() >= self.start_level)
            return self.startable
        return True

    def after_all(self, flag, reached):
        """A level that is reached now counts if it still is after all that happens in this instant."""
        if not reached():
            return

        def check(_):
            if reached() and not getattr(self, flag):
                setattr(self, flag, True)
                self.look()

        last = self.env.event()
        last.callbacks.append(check)
        last._ok, last._value = True, None
        self.env.schedule(last, priority=2)  # behind every other event of the instant

    def hand_over(self, good):
        if self.next is not None:
            self.phase, self.released, blocked = "holding", False, self.env.now
            yield from self.until(lambda: self.restarts(blocked) and self.next.may_put(good))
            through = not self.next.fits(good)
            self.next.put(good)
            if through:
                yield self.env.timeout(0)  # the taker takes them before anything else of this station
        self.phase = "idle"
        if self.world.counts():
            self.passed += good
