"""Which forms of truss are curved, pointed or subdivided, and what a field book calls them."""

from eyebar.terms import Form

FORM_CURES = {
    "Whipple": "did you mean 'double-intersection Pratt'?",
    "half-hip": "did you mean 'half-hip Pratt'?",
    "Petit": "did you mean 'Pennsylvania', or 'Baltimore' where the upper chord is level?",
    "Pettit": "did you mean 'Pennsylvania', or 'Baltimore' where the upper chord is level?",
    "pony": "name the form of the truss, and leave out what is not overhead",
    "deck": "name the form of the truss, and write 'floor: on the upper chord'",
}
"""Words that a field book may use, and what to write instead."""

SUBDIVIDED = (Form.BALTIMORE, Form.PENNSYLVANIA)
"""Every main panel is halved: `panels` counts the halves, each with a floor joint."""

POINTED = (Form.BOWSTRING, Form.LENTICULAR)
"""The chords meet over the bearings: their depth there is nothing."""

CURVED = (Form.PARKER, Form.CAMELBACK, Form.PENNSYLVANIA, *POINTED)
"""One chord at least is not level."""
