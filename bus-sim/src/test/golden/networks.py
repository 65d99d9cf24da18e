"""Makes networks.txt: random networks of resistors, and random pairs, each solved by ngspice (from Debian).

    python3 bus-sim/src/test/golden/networks.py > bus-sim/src/test/resources/dropline/bus/copper/networks.txt

The netlists are written here, by themselves, from the same description that the test reads; nothing of Dropline runs.
Same seed, same networks. A line is one part, or one result:

    network                     a network of points follows
    resistor ONE OTHER OHMS     between two points
    tie POINT VOLTS OHMS        to a fixed potential
    current POINT AMPS          into a point
    volts POINT VOLTS           what ngspice found

    pair MODEL OHMS-PER-METRE   a pair follows; MODEL is where its loads lie
    span FROM TO METRES D1 D0   a stretch of cable, and ohms in the way in each of its wires; stop -1 is the controller
    load STOP UNIT-LOADS
    terminator STOP OHMS
    bias STOP OHMS VOLTS
    ground STOP VOLTS           what a board's common is lifted by
    d1 STOP VOLTS, d0 STOP VOLTS, ohms STOP OHMS     what ngspice found
"""

import random
import re
import subprocess

OHMS_OF_A_UNIT_LOAD = 12000.0


def solved(netlist, nodes):
    """The volts of nodes, by an operating point."""
    lines = ["* network"] + netlist
    lines += [".options reltol=1e-12 abstol=1e-18 vntol=1e-15 gmin=1e-20", ".control", "set numdgt=15", "op"]
    lines += ["print v(%s)" % node for node in nodes]
    lines += [".endc", ".end"]
    run = subprocess.run(["ngspice", "-b", "/dev/stdin"], input="\n".join(lines) + "\n", capture_output=True, text=True)
    volts = {}
    for line in run.stdout.splitlines():
        match = re.match(r"v\((\w+)\) = (\S+)", line.strip())
        if match:
            volts[match.group(1)] = float(match.group(2))
    missing = [node for node in nodes if node not in volts]
    if missing:
        raise SystemExit("ngspice gave nothing for %s:\n%s\n%s" % (missing, run.stdout, run.stderr))
    return volts


class Netlist:
    def __init__(self):
        self.lines = []

    def add(self, letter, one, other, value):
        self.lines.append("%s%d %s %s %.17g" % (letter, len(self.lines), one, other, value))

    def tie(self, node, volts, ohms):
        rail = "rail%d" % len(self.lines)
        self.add("V", rail, "0", volts)
        self.add("R", rail, node, ohms)


def ohms(rng):
    return round(10 ** rng.uniform(0, 5), 3)


def network(rng):
    points = rng.randint(2, 24)
    parts = []
    for point in range(1, points):
        parts.append(("resistor", rng.randrange(point), point, ohms(rng)))
    for _ in range(rng.randint(0, 2 * points)):
        one, other = rng.sample(range(points), 2)
        parts.append(("resistor", one, other, ohms(rng)))
    for _ in range(rng.randint(2, 4)):
        parts.append(("tie", rng.randrange(points), round(rng.uniform(-12, 12), 3), ohms(rng)))
    for _ in range(rng.randint(0, 2)):
        parts.append(("current", rng.randrange(points), round(rng.uniform(-0.1, 0.1), 6)))
    netlist = Netlist()
    for part in parts:
        if part[0] == "resistor":
            netlist.add("R", "p%d" % part[1], "p%d" % part[2], part[3])
        elif part[0] == "tie":
            netlist.tie("p%d" % part[1], part[2], part[3])
        else:
            netlist.add("I", "0", "p%d" % part[1], part[2])
    volts = solved(netlist.lines, ["p%d" % point for point in range(points)])
    print("network")
    for part in parts:
        print(*part)
    for point in range(points):
        print("volts", point, "%.10g" % volts["p%d" % point])


def wires(netlist, spans, per_metre):
    for start, end, metres, way_d1, way_d0 in spans:
        for wire, way in (("a", way_d1), ("b", way_d0)):
            one, other = "%s%s" % (wire, name(start)), "%s%s" % (wire, name(end))
            resistance = metres * per_metre + way
            if resistance > 0:
                netlist.add("R", one, other, resistance)
            else:
                netlist.add("V", one, other, 0)


def name(stop):
    return "hub" if stop < 0 else str(stop)


def pair(rng):
    boards = rng.randint(1, 34)
    per_metre = rng.choice([0, 0.0842, 0.21])
    model = rng.choice(["LINE_TO_GROUND", "LINE_TO_LINE"])
    stops = [-1] + list(range(boards))
    spans = []
    for index, stop in enumerate(stops[1:]):
        start = rng.choice(stops[:index + 1]) if rng.random() < 0.05 else stops[index]
        joint = rng.random() < 0.05
        spans.append((start, stop, round(rng.uniform(0, 8), 2),
                      ohms(rng) if joint else 0, ohms(rng) if joint and rng.random() < 0.5 else 0))
    loads = [(stop, rng.choice([1, 0.5, 0.25, 0.125])) for stop in stops]
    terminators = [(stop, rng.choice([100, 120, 150])) for stop in rng.sample(stops, min(len(stops), rng.randint(0, 3)))]
    biases = [(stop, rng.choice([390, 560, 680, 4700, 20000]), rng.choice([3.3, 4.75, 5]))
              for stop in rng.sample(stops, min(len(stops), rng.randint(1, 4)))]
    grounds = [(stop, round(rng.uniform(-0.5, 0.5), 3)) for stop in stops if rng.random() < 0.3]

    def built(powered):
        netlist = Netlist()
        lift = dict(grounds) if powered else {}
        wires(netlist, spans, per_metre)
        for stop, unit_loads in loads:
            load = OHMS_OF_A_UNIT_LOAD / unit_loads
            a, b = "a" + name(stop), "b" + name(stop)
            if model == "LINE_TO_LINE":
                netlist.add("R", a, b, load)
            else:
                netlist.tie(a, lift.get(stop, 0), load)
                netlist.tie(b, lift.get(stop, 0), load)
        for stop, value in terminators:
            netlist.add("R", "a" + name(stop), "b" + name(stop), value)
        for stop, value, supply in biases:
            common = lift.get(stop, 0)
            netlist.tie("a" + name(stop), common + supply if powered else 0, value)
            netlist.tie("b" + name(stop), common, value)
        return netlist

    nodes = [wire + name(stop) for stop in stops for wire in "ab"]
    rest = solved(built(True).lines, nodes)
    meter = rng.choice(stops)
    cold = built(False)
    cold.add("I", "b" + name(meter), "a" + name(meter), 1)
    seen = solved(cold.lines, ["a" + name(meter), "b" + name(meter)])
    print("pair", model, per_metre)
    for span in spans:
        print("span", *span)
    for kind, parts in (("load", loads), ("terminator", terminators), ("bias", biases), ("ground", grounds)):
        for part in parts:
            print(kind, *part)
    for stop in stops:
        print("d1", stop, "%.10g" % rest["a" + name(stop)])
        print("d0", stop, "%.10g" % rest["b" + name(stop)])
    print("ohms", meter, repr(seen["a" + name(meter)] - seen["b" + name(meter)]))


def main():
    rng = random.Random(485)
    print("# Made by bus-sim/src/test/golden/networks.py with ngspice; see there for the format.")
    for _ in range(200):
        network(rng)
    for _ in range(200):
        pair(rng)


main()
