"""The cautions of the sheet, in plain words; local codes and licensed practice decide."""

from __future__ import annotations

NOT_ENGINEERING = (
    "A plan for a small home garden from your own measurements. It is not a survey, a permit or "
    "an engineer's design; local codes and licensed practice decide."
)
LINES = (
    "Do not dig, not even the test hole, before every buried line is marked and every owner has "
    "answered. Hand-dig within two feet of a mark."
)
PLANTS = (
    "Some plants are poisonous or irritating; keep those from children and pets. Local lists of "
    "invasive plants decide."
)
ALL = (
    LINES,
    "Locators mark the utilities' lines, usually only to the meter; private lines are yours to "
    "find.",
    "A small child can drown in a very little water. Cover or fill an open hole, and keep an eye "
    "on the full pond.",
    "Measure roofs from the ground. No ladder near power lines.",
    "Keep the distances from buildings, septic parts and wells. Watch the basement after the "
    "first storms; if a wall is damp, turn the downspout away the same day.",
    "On slopes, banks and ground that may slide, an engineer decides first.",
    "Where pollution is suspected do not dig and do not soak water in; soil near old painted "
    "walls may hold lead.",
    "Water that stands for more than 48 hours is a fault: find out why.",
    "Grow nothing to eat in runoff from metal or treated roofs.",
    "Dig in short turns, drink in the heat, and lift with your legs.",
    "The overflow must leave over your own ground to a place that may take it; permits, "
    "easements, the association and the right of way may rule on it.",
)
DIG_DAY = (
    "Marks are visible and still good; take a photograph of them.",
    "Fill the test hole or cover it.",
    "Peg out the floor, the full pond and the rim; the diagonals must be equal.",
    "Stretch a level string across; all heights are measured from it.",
    "Strip the turf and stack it for the outside of the berm.",
    "Hand-dig gently within two feet of any mark.",
    "Cut the uphill side first and lay the soil on the downhill line.",
    "Make the floor level within half an inch (12 mm): a level floor, not a bowl.",
    "Loosen the floor with a fork while it is dry; do not tread on it again.",
    "Work in the compost.",
    "Build the berm in thin tamped layers, level all round its top.",
    "Cut the overflow notch, check it with a level, and line it with stone.",
    "Lay the stone where the water comes in, and try it with a bucket.",
    "Plant, water, and mulch; keep the crowns of the plants clear.",
    "Connect the downspout last.",
)
