package gable.report;

import java.util.Map;

/** What a user can do about a feature that was left, by the code of the reason. */
final class Remedies {

  private static final String OTHERWISE =
      "Print it with support, or change the model in a modelling program.";

  private static final String EASE_BY_HAND =
      "Nothing, unless a pin shall go in: then ease the edge in a modelling program.";

  private static final Map<String, String> BY_CODE =
      Map.ofEntries(
          Map.entry("steep-enough", "Nothing: it prints as it is."),
          Map.entry("already-peaked", "Nothing: it prints as it is."),
          Map.entry("below-smallest", "Small bores mostly print. Lower --smallest-bore otherwise."),
          Map.entry("above-largest", "Raise --largest-bore, or print it with support."),
          Map.entry("screw-seat", "Nothing: the head of the screw needs it as it is."),
          Map.entry("not-chosen", "It was left out by --only, --skip or --without."),
          Map.entry("eased-already", "Nothing: it finds its way in as it is."),
          Map.entry("tip-not-flat", "Nothing, if the tip is meant to be so."),
          Map.entry("on-plate", "Nothing: a chamfer on the plate would take its hold away."),
          Map.entry("short-pin", "Nothing: there is no room for a chamfer."),
          Map.entry("above-widest-pin", "Nothing, if it is no pin."),
          Map.entry("touching", "Part the bodies, or unite them, in a modelling program."),
          Map.entry("too-close", "Move the bodies apart in a modelling program."),
          Map.entry("points-down", "Lay the part so that the pin lies or stands."),
          Map.entry("not-paired", "Give both halves of the joint in one run."),
          Map.entry("no-slot", "Print the pin with support, or make room for a slot in the bore."),
          Map.entry("no-web", "Nothing: a slot without a web only weakens the part."),
          Map.entry("has-web", "Nothing: it stands on a web already."),
          Map.entry(
              "other-web",
              "Give --web-width and --clearance as they were for that rib, or take the rib off in a"
                  + " modelling program."),
          Map.entry("mouth-not-round", EASE_BY_HAND),
          Map.entry("no-mouth", EASE_BY_HAND),
          Map.entry("no-outline", "Mend the mesh at the tip of the pin, then try again."),
          Map.entry("no-reshaper", "Nothing: no reshaper that is in use changes such a feature."),
          Map.entry("budget", "Reshape the result again, or split the object."),
          Map.entry("room-enough", "Nothing: the pin with its web goes in as it is."),
          Map.entry("blocked", "Widen the bore, or leave the joint without a web."),
          Map.entry(
              "thin-wall",
              "Thicken the part below the bore, shorten the pin, or lower --least-roof if the part"
                  + " carries no load."),
          Map.entry("slot-hangs", "Lay the part so that the slot lies below or above the bore."),
          Map.entry("web-leans", "Lay the part with the pin so that the web stands below the pin."),
          Map.entry("web-too-thick", "Lower --web-width, or print the pin with support."),
          Map.entry("no-wall", "Make the wall below the pin higher, or print it with support."),
          Map.entry("coaxial", "Print the pin with support; its web would be stopped at the gap."),
          Map.entry("polygon", "Turn a corner of it upwards in a modelling program."),
          Map.entry("thread", "Print it with support, or lay the part so that the thread stands."),
          Map.entry(
              "thin-roof",
              "Allow less with --least-roof if the part carries no load, or thicken the part above"
                  + " the bore."),
          Map.entry(
              "long-bridge",
              "Raise --longest-bridge if your machine spans that much, lower --least-roof, or"
                  + " thicken the part above the bore."),
          Map.entry("plugged", "Unite the bodies in a modelling program, then try again."),
          Map.entry("mixed-orientation", "Use --mixed-orientation clone."),
          Map.entry("signed-part", "Change it only if you can sign it again."),
          Map.entry(
              "reshaper-late",
              "Try again on a machine that is less busy, or leave it out with --without."),
          Map.entry(
              "reshaper-failed", "Tell whoever made that reshaper; --without leaves it out."));

  private Remedies() {}

  static String of(String code) {
    return BY_CODE.getOrDefault(code, OTHERWISE);
  }
}
