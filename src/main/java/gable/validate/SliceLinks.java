package gable.validate;

import gable.threemf.Names;
import gable.threemf.NumberText;
import gable.validate.PackageRead.Target;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** From objects to their slices, across parts. Source: slice extension 1.x, chapters 1 and 2. */
final class SliceLinks {

  private static final Pattern ZERO = Pattern.compile("0(\\.0*)?");
  private static final Pattern ONE = Pattern.compile("1(\\.0*)?");
  private static final int[] ZEROS = {2, 5, 6, 7};

  private final PackageRead all;
  private final BuildChecks build;
  private final Findings findings;

  SliceLinks(PackageRead all, BuildChecks build, Findings findings) {
    this.all = all;
    this.build = build;
    this.findings = findings;
  }

  void check() {
    for (PartRead part : all.whole()) {
      part.model().resources().stream().filter(Resource::isObject).forEach(this::object);
      part.slices().stacks().values().forEach(stack -> stack.references().forEach(this::reference));
    }
    planar();
  }

  private static Optional<String> of(Element object, String attribute) {
    return object.tag().value(Names.SLICE, attribute);
  }

  private void object(Resource object) {
    Element element = object.element();
    Optional<String> id = of(element, "slicestackid");
    boolean lowres = of(element, "meshresolution").filter("lowres"::equals).isPresent();
    if (lowres && id.isEmpty()) {
      String found = "meshresolution=\"lowres\" on an object that has no slices";
      findings.add(ExtensionRules.LOWRES, element, found, "a slicestackid as well");
    }
    if (lowres && !all.part(element).model().requires(Names.SLICE)) {
      String found = "meshresolution=\"lowres\", but slices are not listed as required";
      findings.add(CoreRules.NOT_REQUIRED, element, found, "the slice extension as required");
    }
    if (id.isEmpty()) {
      return;
    }
    int number = NumberText.index(id.get());
    all.target(element, of(element, "slicepath"), number, ExtensionRules.STACK)
        .ifPresent(target -> stack(object, target, lowres));
  }

  private void stack(Resource object, Target target, boolean lowres) {
    Element element = object.element();
    if (!target.resource().is(Names.SLICE, "slicestack")) {
      String found = target.resource().words() + " as the slices of an object";
      findings.add(ExtensionRules.STACK, element, found, "a slicestack");
      return;
    }
    boolean solid = List.of("model", "solidsupport").contains(object.type());
    List<SliceStack> stacks = stacks(target);
    for (SliceStack stack : stacks) {
      if (solid && stack.open().isPresent()) {
        String found = "a polygon that does not return to its start";
        findings.add(ExtensionRules.OPEN_POLYGON, stack.open().get(), found, "closed polygons");
      }
    }
    if (solid && !lowres) {
      fullres(object, target, stacks);
    }
  }

  /** The stack itself, or those that it refers to. */
  private List<SliceStack> stacks(Target target) {
    SliceStack own = target.part().slices().stacks().get(target.resource().id());
    if (own == null) {
      return List.of();
    }
    List<SliceStack> stacks = new ArrayList<>();
    if (!own.isEmpty()) {
      stacks.add(own);
    }
    for (Element reference : own.references()) {
      all.source()
          .part(reference.value("slicepath").orElse("").strip())
          .flatMap(
              part -> all.parts().stream().filter(p -> p.name().equals(part.name())).findFirst())
          .map(part -> part.slices().stacks().get(reference.index("slicestackid")))
          .ifPresent(stacks::add);
    }
    return stacks;
  }

  /** A mesh from which the slices can be made has their volume. */
  private void fullres(Resource object, Target target, List<SliceStack> stacks) {
    PartRead part = all.part(object.element());
    Optional<Double> volume = part.meshes().volume(object.id());
    if (volume.isEmpty() || stacks.isEmpty()) {
      return;
    }
    double scale = Math.pow(target.part().model().millimetres() / part.model().millimetres(), 3);
    double sliced = 0;
    double slack = 0;
    for (SliceStack stack : stacks) {
      sliced += stack.volume() * scale;
      slack += stack.slack() * scale;
    }
    if (Math.abs(volume.get() - sliced) > slack) {
      String found = "a mesh of the volume " + volume.get() + ", slices of " + sliced;
      String expected = "a mesh that the slices can be made from, or meshresolution=\"lowres\"";
      findings.add(ExtensionRules.FULLRES, object.element(), found, expected);
    }
  }

  private void reference(Element reference) {
    Optional<Target> target =
        all.target(
            reference,
            reference.value("slicepath"),
            reference.index("slicestackid"),
            ExtensionRules.STACK);
    if (target.isEmpty()) {
      return;
    }
    SliceStack stack = target.get().part().slices().stacks().get(target.get().resource().id());
    boolean same = target.get().part() == all.part(reference);
    if (stack == null || same || !stack.references().isEmpty()) {
      String found =
          stack == null
              ? "no stack"
              : same ? "a stack of the same part" : "a stack that refers to others again";
      findings.add(
          ExtensionRules.STACK_DEPTH, reference, found, "a stack of slices in another part");
    }
  }

  /** All transforms on the way down to an object with slices keep the plane of the slices. */
  private void planar() {
    List<Element> uses = new ArrayList<>();
    for (PartRead part : all.whole()) {
      uses.addAll(part.model().components());
      uses.addAll(part.model().isRoot() ? part.model().items() : List.of());
    }
    Set<Element> sliced = sliced();
    for (Element use : uses) {
      if (shown(use).filter(sliced::contains).isPresent()) {
        keepsPlane(use);
      }
    }
  }

  private Optional<Element> shown(Element use) {
    return build.shown(use).map(target -> target.resource().element());
  }

  /** Objects that have slices, and those that are made of such. */
  private Set<Element> sliced() {
    Map<Element, List<Element>> users = new HashMap<>();
    Deque<Element> left = new ArrayDeque<>();
    for (PartRead part : all.whole()) {
      for (Element component : part.model().components()) {
        Element user = component.parent().parent();
        shown(component)
            .ifPresent(used -> users.computeIfAbsent(used, key -> new ArrayList<>()).add(user));
      }
      part.model().resources().stream()
          .map(Resource::element)
          .filter(element -> of(element, "slicestackid").isPresent())
          .forEach(left::add);
    }
    Set<Element> sliced = new HashSet<>();
    while (!left.isEmpty()) {
      Element object = left.pop();
      if (sliced.add(object)) {
        left.addAll(users.getOrDefault(object, List.of()));
      }
    }
    return sliced;
  }

  private void keepsPlane(Element use) {
    List<String> words = NumberText.words(use.value("transform").orElse(""));
    if (words.size() != 12) {
      return; // none, or the table has found it
    }
    boolean planar = ONE.matcher(words.get(8)).matches();
    for (int place : ZEROS) {
      planar &= ZERO.matcher(words.get(place)).matches();
    }
    if (!planar) {
      String found = "transform=\"" + String.join(" ", words) + "\" of an object with slices";
      findings.add(ExtensionRules.PLANAR, use, found, "m02, m12, m20, m21 as 0 and m22 as 1");
    }
  }
}
