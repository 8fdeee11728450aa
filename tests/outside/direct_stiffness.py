"""Solves frames of straight bars the textbook way: twelve by twelve matrices in the bar's own axes, turned into space; rigid
ties as equations beside the springs. Reads a list of frames as JSON from a file and prints what each does under its loads."""

import json
import sys

import numpy as np


def bar_matrix(bar, nodes):
    start, end = np.array(nodes[bar["from"]]), np.array(nodes[bar["to"]])
    run = end - start
    L = np.linalg.norm(run)
    x = run / L
    y = np.array(bar["deep"], float)
    y = y - x * (x @ y)
    y /= np.linalg.norm(y)
    z = np.cross(x, y)
    E, G, A, J = bar["elasticity"], bar["shearModulus"], bar["area"], bar["torsion"]
    Iz, Iy = bar["inertia"], bar["inertiaAcross"]
    k = np.zeros((12, 12))
    k[0, 0] = k[6, 6] = E * A / L
    k[0, 6] = -E * A / L
    k[3, 3] = k[9, 9] = G * J / L
    k[3, 9] = -G * J / L
    # in the plane of x and y, then of x and z
    for I, v, t, s in ((Iz, 1, 5, 1), (Iy, 2, 4, -1)):
        k[v, v] = k[v + 6, v + 6] = 12 * E * I / L**3
        k[v, v + 6] = -12 * E * I / L**3
        k[t, t] = k[t + 6, t + 6] = 4 * E * I / L
        k[t, t + 6] = 2 * E * I / L
        k[v, t] = k[v, t + 6] = s * 6 * E * I / L**2
        k[t, v + 6] = k[v + 6, t + 6] = -s * 6 * E * I / L**2
    k = np.triu(k) + np.triu(k, 1).T
    turn = np.kron(np.eye(4), np.array([x, y, z]))
    return turn.T @ k @ turn


def skew(r):
    return np.array([[0, -r[2], r[1]], [r[2], 0, -r[0]], [-r[1], r[0], 0]])


def tie_rows(tie, nodes, size):
    """Six rows: what the place of the tie moves along its axes and turns about them, `to` against `from`."""
    rows = np.zeros((6, size))
    axes = np.array(tie["axes"])
    for node, sign in ((tie.get("from"), -1), (tie["to"], 1)):
        if node is None:
            continue
        arm = np.array(tie["at"]) - np.array(nodes[node])
        rows[:3, 6 * node : 6 * node + 3] += sign * axes
        rows[:3, 6 * node + 3 : 6 * node + 6] += sign * axes @ -skew(arm)
        rows[3:, 6 * node + 3 : 6 * node + 6] += sign * axes
    return rows


def solve(frame):
    nodes = frame["nodes"]
    size = 6 * len(nodes)
    K = np.zeros((size, size))
    for bar in frame["bars"]:
        at = [6 * n + i for n in (bar["from"], bar["to"]) for i in range(6)]
        K[np.ix_(at, at)] += bar_matrix(bar, nodes)
    rigid, springs = [], []
    for t, tie in enumerate(frame["ties"]):
        for i, (row, k) in enumerate(zip(tie_rows(tie, nodes, size), tie["moves"] + tie["turns"])):
            if k is None:
                rigid.append((t, i, row))
            else:
                springs.append((t, i, row, k))
                K += k * np.outer(row, row)
    C = np.array([row for _, _, row in rigid])
    load = np.zeros(size)
    for one in frame["loads"]:
        node, force = one["node"], np.array(one["force"])
        load[6 * node : 6 * node + 3] += force
        load[6 * node + 3 : 6 * node + 6] += np.cross(np.array(one["at"]) - np.array(nodes[node]), force)
    whole = np.block([[K, C.T], [C, np.zeros((len(C), len(C)))]])
    # both halves of the unknowns of one size, or rounding eats the small ones
    scale = np.concatenate([1 / np.sqrt(np.maximum(np.diag(K), 1)), np.ones(len(C))])
    whole = whole * scale[:, None] * scale[None, :]
    answer = scale * np.linalg.solve(whole, scale * np.concatenate([load, np.zeros(len(C))]))
    u = answer[:size].reshape(-1, 6)
    passed = np.zeros((len(frame["ties"]), 6))
    for (t, i, _), force in zip(rigid, answer[size:]):
        passed[t, i] = force
    for t, i, row, k in springs:
        passed[t, i] = k * (row @ answer[:size])
    return {"moves": u[:, :3].tolist(), "turns": u[:, 3:].tolist(), "passed": (-passed).tolist()}


with open(sys.argv[1], encoding="utf-8") as file:
    print(json.dumps([solve(frame) for frame in json.load(file)]))
