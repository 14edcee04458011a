/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* What is said of dies, rigged lifts, gear, trucks and carts. {value%} and {limit%} say a ratio in percent. */

static const SyTemplate templates[] = {
  /* rows of the policy */
  { "gear-over-capacity", N_ ("{subject} is loaded to {value%} of what it may carry as it is used; the limit is {limit%}.") },
  { "gear-over-capacity-unbounded", N_ ("{subject} may carry nothing as it is used.") },
  { "gear-notice", N_ ("{subject} is loaded to {value%} of what it may carry as it is used: over the notice of {limit%}.") },
  { "leg-too-flat", N_ ("A leg hangs {value} from the vertical; flatter than {limit} from the vertical (30\xc2\xb0 from the "
                        "horizontal) is not allowed.") },
  { "leg-flat", N_ ("A leg hangs {value} from the vertical; flatter than {limit} loads it steeply more.") },

  { "truck-over-capacity", N_ ("The truck is loaded to {value%} of what it may carry at this load centre; the limit is {limit%}.") },
  { "truck-notice",
    N_ ("The truck is loaded to {value%} of what it may carry at this load centre: over the notice of {limit%}.") },
  { "cart-over-capacity", N_ ("The cart is loaded to {value%} of its rated load; the limit is {limit%}.") },
  { "cart-notice", N_ ("The cart is loaded to {value%} of its rated load: over the notice of {limit%}.") },
  { "cart-tips", N_ ("The cart comes to {value%} of what tips it; over {limit%} it turns over.") },
  { "cart-near-tipping", N_ ("The cart comes to {value%} of what tips it: over the notice of {limit%}.") },
  { "cart-start-force", N_ ("It takes {value} to start it: over the {limit} that one person can be asked for; use a tug or a drive.") },
  { "cart-holding-force",
    N_ ("It takes {value} to hold it on the slope: over the {limit} that one person can be asked for; a brake that holds it, "
        "or a level way.") },
  { "cart-moving-force",
    N_ ("It takes {value} to keep it moving: over the {limit} that one person can be asked for; use a tug or a drive.") },

  /* dies */
  { "die-reference-mass",
    N_ ("With its allowance it weighs {value}: over the reference mass of {limit} for hands. It needs lifting gear.") },
  { "die-how-not-assessed", N_ ("A mass alone does not say how it may be moved: plan the lift, or assess the task.") },
  { "die-no-centre", N_ ("Where it balances is not known: no bodies were given.") },
  { "die-centre-outside-points", N_ ("The centre of gravity is {value} outside the outline of the lifting points.") },
  { "die-centre-near-edge",
    N_ ("The centre of gravity is only {value} inside the edge of the lifting points; {limit} would be a tenth of their "
        "width.") },
  { "die-weighed-differs",
    N_ ("The bodies come to {value}, the scale said {limit}: more than a tenth apart. Something was forgotten, or misread.") },

  /* geometry that is not allowed */
  { "centre-outside-the-points",
    N_ ("The centre of gravity is outside the lifting points, {value} from their edge: no taut legs balance it.") },
  { "legs-do-not-meet", N_ ("The legs do not meet: the hook is not above the points, or a leg is too short.") },
  { "centre-above-what-holds-it",
    N_ ("The centre of gravity, at a height of {value}, is above what holds it: the load turns over.") },
  { "basket-hangs-free", N_ ("How a load hangs free in a basket is not settled by statics: give the hook.") },
  { "half-held-by-nothing",
    N_ ("Every leg pulls on {subject} alone, and nothing is named that holds the other half.") },
  { "halves-not-tied",
    N_ ("The legs pull on both halves, and nothing is named that ties them: as one stiff load it holds only if they cannot "
        "part.") },
  { "die-halves-of-points-not-known",
    N_ ("It opens into halves, the points do not say on which they sit, and nothing is named that ties the halves.") },
  { "centre-level-with-the-points",
    N_ ("The centre of gravity is nearly as high as the points: a little higher and the load turns over.") },
  { "basket-may-slide", N_ ("The basket at {subject}: it slides until both parts pull alike; see that it lies balanced and held.") },
  { "basket-uneven",
    N_ ("The basket at {subject}: one part pulls {value} times the other; over {limit} it begins to slide.") },
  { "basket-slides",
    N_ ("The basket at {subject}: one part pulls {value} times the other; over {limit} friction does not hold it and the load "
        "slides.") },
  { "basket-slides-unbounded", N_ ("The basket at {subject}: one part pulls nothing, so the load slides out of it.") },
  { "reeved-through-points",
    N_ ("One sling runs through two lifting points at {subject}: between them it pulls them together. One leg a point.") },
  { "as-of-another-day", N_ ("Due dates were judged as on {value}, which is not today.") },
  { "allowance-below-the-policy",
    N_ ("An allowance of {value} was given; the policy asks for {limit} on a mass that was had so.") },
  { "half-not-held",
    N_ ("No leg pulls on {subject}, and nothing is named that ties it to the half that is lifted.") },
  { "load-tilted", N_ ("The load hangs tilted by {value}; over {limit} is not allowed.") },
  { "load-tilts", N_ ("The load hangs tilted by {value}: over {limit}, what lies loose may slide.") },
  { "how-it-hangs-not-given",
    N_ ("The leg at {subject}: neither a hook nor its length was given, so how the load hangs is not known.") },
  { "centre-near-edge",
    N_ ("The centre of gravity is only {value} inside the edge of what holds it; {limit} would be a tenth of its width.") },
  { "eyebolt-from-the-side",
    N_ ("{subject}: the eyebolt is pulled {value} off its own axis, from its side; over {limit} it is not to be used.") },
  { "eyebolt-beyond-its-rule",
    N_ ("{subject}: the eyebolt is pulled {value} off its own axis; shipyard rules keep it within {limit}.") },
  { "leg-slack", N_ ("The leg at {subject} hangs loose, with {value} to spare.") },
  { "legs-share-unevenly",
    N_ ("More legs than statics settles: a length error of {value} in one of them leaves another slack. The largest share of "
        "each leg counts.") },
  { "legs-not-alike",
    N_ ("The legs are not alike enough for the full mode factor of the European rule; the load was held against a mode factor of {value}.") },

  /* what holds it */
  { "element-out-of-date", N_ ("{subject}: its examination was due on {limit}; the day is {value}.") },
  { "out-of-date", N_ ("Its examination was due on {limit}; the day is {value}.") },
  { "withdrawn", N_ ("It is withdrawn from use.") },
  { "no-due", N_ ("When its next examination is due was not given.") },
  { "element-withdrawn", N_ ("{subject}: withdrawn from use.") },
  { "element-no-due", N_ ("{subject}: when its next examination is due was not given.") },
  { "element-no-wll", N_ ("{subject}: no working load limit; what is not marked is not used.") },
  { "element-no-rating-basis",
    N_ ("{subject}: it was not said what the marking rates: one leg, or the whole sling with its legs and angles.") },
  { "marking-cannot-be-right",
    N_ ("{subject}: marked {value}, but nothing of that size carries more than {limit}; look at the marking again.") },
  { "outside-tag-band", N_ ("{subject}: the leg hangs {value} from the vertical, outside the angles on its tag.") },
  { "day-not-known", N_ ("The day is not known, so no due date can be judged.") },
  { "bare-edge", N_ ("The sling at {subject} runs over a bare edge: rope and textile are cut by it.") },
  { "sling-temperature", N_ ("The sling at {subject} is not for {value}.") },
  { "bend-too-tight", N_ ("The rope at {subject} is bent too tightly: D/d {value}.") },
  { "bend-read", N_ ("The bend at {subject} was read as D/d {value}: diameter of the bend over that of the rope.") },
  { "bend-not-given", N_ ("How tightly the rope at {subject} is bent (D/d) was not given.") },
  { "choke-angle-not-given", N_ ("The angle of choke at {subject} was not given.") },
  { "eyebolt-no-family", N_ ("{subject}: the family of the eyebolt was not given; its rule for angles is not known.") },
  { "eyebolt-no-axis", N_ ("{subject}: the axis of the bolt was not given; how far it is pulled off it is not known.") },
  { "eyebolt-shoulder-not-known", N_ ("{subject}: it was not said whether the eyebolt has a shoulder.") },
  { "eyebolt-temperature", N_ ("{subject}: the eyebolt is not for {value}.") },
  { "shoulderless-at-an-angle",
    N_ ("{subject}: an eyebolt without a shoulder is pulled {value} off its axis; it may be pulled in line only.") },
  { "eyebolt-off-its-axis", N_ ("{subject}: the eyebolt is pulled {value} off its own axis, farther than its rule allows.") },
  { "eyebolt-reduced", N_ ("{subject}: pulled {value} off its own axis, the eyebolt keeps {limit} of its marking.") },
  { "eye-in-plane", N_ ("Eyebolts: the plane of each eye in line with the pull; one leg an eye.") },
  { "shackle-side-load", N_ ("{subject}: the shackle is pulled {value} from its line, which is not permitted.") },
  { "shackle-in-line-assumed", N_ ("{subject}: the shackle was taken to be pulled in line.") },
  { "hoist-ring-pulled-into-the-load", N_ ("{subject}: the hoist ring is pulled {value} from its axis, into the load.") },
  { "hoist-ring-no-axis", N_ ("{subject}: the axis of the hoist ring was not given; see that its frame clears the load.") },
  { "leg-no-hitch", N_ ("The leg at {subject}: how it is hitched was not given; it was taken as straight.") },
  { "leg-edge-not-asked", N_ ("The leg at {subject}: it was not asked whether it runs over an edge.") },
  { "leg-no-material", N_ ("The leg at {subject}: what the sling is made of was not given.") },
  { "leg-no-elements", N_ ("The leg at {subject}: nothing is listed that it consists of.") },
  { "leg-no-sling", N_ ("The leg at {subject}: no sling is listed in it.") },
  { "length-leads-elsewhere",
    N_ ("The leg at {subject}: a length of {value} was given, but to the hook it is {limit}. One of the two is wrong.") },
  { "no-suspension", N_ ("What the hook hangs from was not given: hoist, crane, beam or truck.") },
  { "hung-from-forks", N_ ("{subject}: a load hung from forks without a rated attachment is outside the method.") },
  { "forks-attachment-not-known", N_ ("{subject}: it was not said whether the forks have a rated hook attachment.") },
  { "mass-basis-not-given",
    N_ ("How the mass was had was not given; the largest allowance of the policy, {value}, was taken.") },

  /* an item of gear; its examination: {value} the day, {limit} when it is due */
  { "gear-withdrawn", N_ ("Withdrawn from use.") },
  { "gear-withdrawn-because", N_ ("Withdrawn from use: {subject}") },
  { "gear-damaged", N_ ("Damaged: not to be used until it is repaired and examined.") },
  { "gear-worn", N_ ("Worn: have it looked at, and replace it in time.") },
  { "gear-failed", N_ ("The last examination, of {value}, found it not fit for use.") },
  { "gear-passed-with-remarks", N_ ("The last examination, of {value}, passed it with remarks: see the report.") },
  { "gear-out-of-date", N_ ("Out of date: its examination was due on {limit}; the day is {value}.") },
  { "gear-due-soon", N_ ("Its examination is due on {limit}; days left: {third}.") },
  { "gear-no-due", N_ ("When its next examination is due is not known.") },
  { "gear-examined-later", N_ ("Its last examination is given as {value}, which is after the day, {limit}.") },
  { "gear-interval-long", N_ ("Examined every {value} months; the policy asks for every {limit}.") },
  { "gear-due-late", N_ ("Its next examination, on {value}, is later than {limit}: {third} months after the last one or, where that is not known, after the day.") },
  { "gear-due-after-interval", N_ ("Its next examination, on {value}, is later than its own interval allows, {limit}.") },
  { "gear-no-wll", N_ ("No working load limit: what is not marked is not used.") },
  { "gear-no-rating-basis",
    N_ ("It was not said what the marking rates: one leg, or the whole sling with its legs and angles.") },
  { "gear-tag-not-read", N_ ("The marking rates the whole sling, but the legs or the angles on its tag were not given.") },
  { "gear-no-family", N_ ("The family of the eyebolt was not given: its rule for angles is not known.") },
  { "gear-look-over", N_ ("Look it over before every use; take out of use what is damaged, unmarked or out of date.") },

  /* trucks */
  { "truck-no-rating", N_ ("The rating was not given: read it from the truck's data plate.") },
  { "truck-plate-not-read",
    N_ ("The rating was not read from the truck's own data plate, for this lift height and with what is fitted.") },
  { "truck-no-lift-height", N_ ("How high it is lifted was not given; a plate rates a truck by height.") },
  { "truck-attachment-not-given", N_ ("It was not said whether an attachment is fitted; it lowers the rating.") },
  { "truck-no-rated-centre", N_ ("The load centre of the plate was not given.") },
  { "truck-no-actual-centre", N_ ("How far the centre of gravity lies in front of the forks was not given.") },
  { "truck-attachment-unrated", N_ ("The plate does not name the attachment: what the truck carries with it is outside the method.") },
  { "truck-hung-from-forks", N_ ("A load hung from forks without a rated attachment is outside the method.") },
  { "truck-side-shift",
    N_ ("The centre of gravity is {value} beside the middle; the plate allows {limit}: the truck can fall over sideways.") },
  { "truck-no-side-limit", N_ ("The centre of gravity is {value} beside the middle; what the plate allows was not given.") },
  { "truck-stands-assumed", N_ ("It was taken that the load stands on the forks and does not hang from them.") },
  { "truck-middle-assumed", N_ ("The centre of gravity was taken to be midway between the forks.") },
  { "truck-load-moment-judged",
    N_ ("Judged by load moment: {value}. Moments about the front axle would give {limit}; that is not judged.") },
  { "truck-load-low",
    N_ ("Drive with the load low and the mast tilted back; on a slope with the load on the uphill side.") },

  /* carts */
  { "cart-no-rated-load", N_ ("The rated load of the cart was not given; what is not marked is not used.") },
  { "cart-no-slope", N_ ("The steepest slope on the way was not given; 0 says that it is level.") },
  { "cart-no-footprint", N_ ("Track and wheelbase were not both given; over the smaller one it tips first.") },
  { "cart-no-centre-height", N_ ("The height of the centre of gravity was not given.") },
  { "cart-no-push-height", N_ ("The height at which it is pushed was not given.") },
  { "cart-no-wheel", N_ ("Neither a rolling coefficient nor the kind of wheel was given.") },
  { "cart-floor-not-smooth",
    N_ ("The rolling coefficient of {value} that is published for this wheel holds on a good floor only: measure the force.") },
  { "cart-no-brake-given", N_ ("There is a slope on the way, and it was not said which brake the cart has.") },
  { "cart-runs-away",
    N_ ("Without a brake it runs away on the slope: that pulls with {value}, and the wheels resist with {limit} at least.") },
  { "cart-slope-without-brake",
    N_ ("There is a slope on the way and no brake: it pulls with {value}, and only the wheels resist, with {limit} at least.") },
  { "cart-rolling-published", N_ ("A rolling coefficient of {value} was taken: the upper end of what is published for the wheel.") },
  { "cart-start-assumed", N_ ("Starting was taken to need {value} times the force that keeps it moving.") },
  { "cart-no-stop-judged", N_ ("No hard stop was given, so none is judged; stopped at {value} g on the level it tips.") },
  { "cart-gross-judged", N_ ("The mass of the load was not given: cart and load together were held against the rated load.") },
  { "cart-mass-as-given", N_ ("Nothing was added to the masses: give them with what is not known added.") },
  { "cart-way-and-stops", N_ ("Way clear, wheel stops and decks level where it is loaded; nobody on the downhill side.") },

  /* said with every plan */
  { "allowance-assumed", N_ ("An allowance of {value} was added to the mass: a figure of the policy, not a measurement.") },
  { "dynamic-assumed", N_ ("A dynamic factor of {value} was taken: lift without a jerk.") },
  { "never-under-the-load", N_ ("Nobody under the load or in its way, at any time.") },
  { "trial-lift", N_ ("Trial lift first: a hand's breadth, stop, look whether it is level and everything holds.") },
  { "tag-line", N_ ("Guide it with a tag line, not with hands on the load.") },
  { "die-free", N_ ("Clamps off and the die free of the press before the hoist takes up.") },
  { "slugs-and-fluid-out", N_ ("Slugs, scrap and fluid out: they are mass nobody weighed, and they fall.") },
};

typedef struct
{
  const char *point, *element;
} Thing;

static char *
fill_thing (const char *name, gconstpointer data)
{
  const Thing *thing = data;

  return g_strdup (strcmp (name, "point") == 0 ? thing->point : thing->element);
}

const char *
sy_words_rigging_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

/* The result of an item of gear in a sentence. */
static const struct
{
  const char *refused, *in_date, *one_day, *last_day, *over, *not_known;
} gear_results = {
  N_ ("Not to be used; its examination is due on {due}."),
  N_ ("In date until {due}, {days} days left."),
  N_ ("In date until {due}, one day left."),
  N_ ("In date until {due}, the last day."),
  N_ ("Out of date since {due}."),
  N_ ("Not known until when it is in date."),
};

static char *
fill_gear (const char *name, gconstpointer data)
{
  const SyFindings *findings = data;

  if (strcmp (name, "due") == 0)
    return sy_words_quantity (sy_words_value (findings, "valid_until"), SY_KIND_DATE, findings->units);
  if (strcmp (name, "days") == 0)
    return sy_words_quantity (sy_words_value (findings, "days_left"), SY_KIND_COUNT, findings->units);
  return NULL;
}

static char *
gear_result (const SyFindings *findings, SyTranslate translate)
{
  double days = sy_words_value (findings, "days_left");
  const char *msgid = isnan (days)                                  ? gear_results.not_known
                      : days < 0                                    ? gear_results.over
                      : findings->verdict == SY_VERDICT_DO_NOT_LIFT ? gear_results.refused
                      : days == 0                                   ? gear_results.last_day
                      : days == 1                                   ? gear_results.one_day
                                                                    : gear_results.in_date;

  return sy_words_fill (msgid, translate, fill_gear, findings);
}

/* How much of "A.x.sling 1" is the name of the leg: names may hold dots themselves, so the legs of the findings are asked. */
static gsize
leg_length (const SyFindings *findings, const char *name)
{
  for (gsize i = 0; i < findings->sink.n_named; i++)
    {
      const char *symbol = findings->named[i].text;
      const char *leg = symbol + strlen ("leg.");
      gsize length = strlen (symbol);

      if (!g_str_has_prefix (symbol, "leg.") || !g_str_has_suffix (symbol, ".angle"))
        continue;
      length -= strlen ("leg.") + strlen (".angle");
      if (strncmp (name, leg, length) == 0 && name[length] == '.')
        return length;
    }
  return strcspn (name, ".");
}

char *
sy_words_thing (const SyFindings *findings, const char *symbol, SyTranslate translate)
{
  static const char at[] = N_ ("{thing} at {point}"), us[] = N_ ("The sling by the US rule"),
                    en[] = N_ ("The sling by the European rule");
  static const char *const suffixes[] = { ".utilisation", ".demand", ".capacity", ".angle" };
  g_autofree char *id = g_strdup (symbol);

  if (g_str_has_prefix (symbol, "share."))
    return sy_words_team_thing (symbol);
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++)
    if (g_str_has_suffix (id, suffixes[i]))
      {
        id[strlen (id) - strlen (suffixes[i])] = '\0';
        break;
      }
  if (strcmp (id, "rule.us") == 0 || strcmp (id, "rule.en") == 0)
    {
      const char *text = strcmp (id, "rule.us") == 0 ? us : en;
      return g_strdup (translate ? translate (text) : text);
    }
  if (strcmp (findings->method->id, "lift-set") == 0 || strcmp (findings->method->id, "changeover") == 0)
    return sy_words_sets_thing (symbol, translate);
  if (g_str_has_prefix (id, "suspension."))
    return g_strdup (id + strlen ("suspension."));
  if (!g_str_has_prefix (id, "element."))
    return NULL;
  const char *name = id + strlen ("element.");
  gsize point = leg_length (findings, name);
  g_autofree char *leg = g_strndup (name, point);
  const Thing thing = { leg, name[point] == '.' ? name + point + 1 : "" };
  return sy_words_fill (at, translate, fill_thing, &thing);
}

char *
sy_words_rigging_result (const SyFindings *findings, SyTranslate translate)
{
  static const char *const loads[] = { "die-mass", "rigged-lift", "truck", "cart", NULL };

  if (strcmp (findings->method->id, "gear") == 0)
    return gear_result (findings, translate);
  return g_strv_contains (loads, findings->method->id) ? sy_words_load_result (findings, translate) : NULL;
}
