/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* When a caution of the table holds: a fixed list, since each condition is reckoned by the cut plan. A
 * crew's own rows name one of them. */
typedef enum {
  LB_WHEN_ALWAYS,         /* every card */
  LB_WHEN_BURNING,        /* bars are left to burn */
  LB_WHEN_OXYGEN,         /* the same, and the regulator’s setting is reckoned */
  LB_WHEN_UNDER_WATER,    /* the cut is under water */
  LB_WHEN_SPLASH_ZONE,    /* it is where the surface comes and goes, and bars are left */
  LB_WHEN_BATTERED,       /* the pile leans */
  LB_WHEN_BATTERED_BURN,  /* it leans and bars are left to burn */
  LB_WHEN_LEAN_UNKNOWN,   /* whether it leans, or which way, is not known */
  LB_WHEN_PLUMB_BURN,     /* it stands plumb and bars are left to burn */
  LB_WHEN_STRAND,         /* its bars are prestressing strand */
  LB_WHEN_HOLLOW,         /* it is hollow and bars are left to burn */
  LB_WHEN_BARS_UNKNOWN,   /* size or count of its bars is not known */
  LB_WHEN_CONCRETE_LEFT,  /* concrete stands in the cut */
  LB_WHEN_NOT_STANDING,   /* the hook must hold before any bar is burned */
  LB_WHEN_HOLD_KNOWN,     /* the hook must hold before some bar is burned: those left would not */
  LB_WHEN_KEPT_BAR,       /* the same, because it is one of those kept to the end */
  LB_WHEN_HINGE,          /* before some bar, because it leaves bars in one line */
  LB_WHEN_HOLD_UNKNOWN,   /* the pile leans and no hold can be reckoned */
  LB_WHEN_SEVERAL_DIVES,  /* the burn takes more than one dive */
  LB_WHEN_DIVES_MAY_GROW, /* one dive is likely to do, at the slow end of the range it does not */
  LB_WHEN_PAST_LIMIT,     /* no dive leaves time to burn */
  LB_WHEN_LIMIT_UNKNOWN,  /* no no-stop limit can be read */
  LB_WHEN_CURRENT_OVER,   /* the water runs faster than the job allows */
  LB_WHEN_LEAD_DROP_OVER, /* the leads lose more voltage than they may */
  LB_WHEN_LEADS_ASSUMED,  /* they would, by the length taken for granted: nobody has said theirs */
  LB_WHEN_RESIDUAL_LOW,   /* cylinders are used down to the regulator’s setting or under it */
  LB_WHEN_SUBMERGED_LIFT, /* the piece is lifted from under water */
  LB_WHEN_LOAD_KNOWN,     /* the same, and its weight is reckoned */
  LB_WHEN_LOAD_UNKNOWN,   /* the same, and its weight is not known */
  LB_WHEN_CAPACITY_NEAR,  /* load, heavy end, from 75 % of the crane’s capacity to all of it */
  LB_WHEN_CAPACITY_OVER,  /* load, heavy end, over the crane’s capacity */
  LB_WHEN_CAPACITY_UNKNOWN, /* the load is reckoned, and no capacity entered */
  LB_WHEN_BEYOND_CHART,     /* the radius is past the end of the crane’s chart */
  LB_WHEN_BARGE_CRANE,      /* the crane stands on a barge */
  LB_WHEN_LIST_OVER,        /* list or trim over the limit */
  LB_WHEN_TWO_CRANES,       /* more than one crane lifts */
  LB_WHEN_SLING_FLAT,       /* legs from 30° to under 45° from level */
  LB_WHEN_SLING_OVER,       /* tension of a leg, heavy end, over its rating */
  LB_WHEN_WHOLE_PULL,       /* what it takes to draw the pile whole is reckoned */
  LB_WHEN_ON_MUD,           /* the piece lies on mud or soft clay, and its weight is reckoned */
  LB_WHEN_BREAKING,         /* concrete is broken to bare the bars */
} LbCautionWhen;

#define LB_N_CAUTION_WHENS (LB_WHEN_BREAKING + 1)

/* Blanks in a caution's words, "{bar}": the figure is written in their place. */
typedef enum {
  LB_BLANK_REGULATOR,     /* pressure set */
  LB_BLANK_DEPTH,         /* of water over the cut */
  LB_BLANK_LEAN,          /* angle from the vertical */
  LB_BLANK_LEAN_SIDE,     /* compass point it leans to */
  LB_BLANK_LEAD_SIDE,     /* the other side */
  LB_BLANK_VOID,          /* diameter of the hole */
  LB_BLANK_BAR,           /* number on the section */
  LB_BLANK_BURN,          /* time at the pile */
  LB_BLANK_BURN_MOST,     /* the same at the slow end of its range */
  LB_BLANK_LIMIT,         /* longest dive: no-stop limit, or the job’s own when that is shorter */
  LB_BLANK_DIVES,         /* count */
  LB_BLANK_DIVES_MOST,    /* at the slow end */
  LB_BLANK_CURRENT,       /* of the water */
  LB_BLANK_CURRENT_LIMIT, /* the job’s */
  LB_BLANK_LEAD_DROP,     /* voltage lost */
  LB_BLANK_LEAD_DROP_MOST,
  LB_BLANK_LEAD_LENGTH, /* out and back */
  LB_BLANK_RESIDUAL,    /* pressure at which a cylinder is changed */
  LB_BLANK_LOAD,        /* at the hook */
  LB_BLANK_LOAD_MOST,   /* the same at the heavy end of its range */
  LB_BLANK_CAPACITY,    /* of the crane at this radius */
  LB_BLANK_SHARE,       /* of that capacity */
  LB_BLANK_SHARE_MOST,
  LB_BLANK_RADIUS, /* of the lift, list and trim counted */
  LB_BLANK_LIST,   /* list or trim, the greater */
  LB_BLANK_LIST_LIMIT,
  LB_BLANK_ANGLE,   /* of the legs from level */
  LB_BLANK_TENSION, /* of a leg, at the heavy end */
  LB_BLANK_RATING,  /* of a leg as hitched */
  LB_BLANK_GRIP,    /* of the ground, at most */
  LB_BLANK_SUCTION, /* of the mud, at most */
} LbCautionBlank;

#define LB_N_CAUTION_BLANKS (LB_BLANK_SUCTION + 1)

const char *lb_caution_when_key (LbCautionWhen when); /* "hold-known": in files */
gboolean lb_caution_when_from_key (const char *key, LbCautionWhen *out_when);

/* Whether it holds at nearly every cut, whatever the pile. */
gboolean lb_caution_when_is_ordinary (LbCautionWhen when);

const char *lb_caution_blank_key (LbCautionBlank blank); /* "bar": "{bar}" in the words */

/* Whether the figure is known whenever the condition holds, so that words may use it. */
gboolean lb_caution_when_knows (LbCautionWhen when, LbCautionBlank blank);

/**
 * lb_caution_words_stray:
 *
 * Returns: (transfer full) (nullable): the first of @words that stands in braces and is no blank
 *   which the condition knows, or a brace without its fellow; %NULL when there is none
 */
char *lb_caution_words_stray (LbCautionWhen when, const char *words);

/**
 * lb_caution_words_fill:
 * @words: of a row, or a translation of them
 * @values: a text for each blank, %NULL where there is none
 *
 * Returns: (transfer full): the words with the texts in place of the blanks; "–" for one that has
 *   none, and what is no blank stays as it is
 */
char *lb_caution_words_fill (const char *words, const char *const values[LB_N_CAUTION_BLANKS]);

G_END_DECLS
