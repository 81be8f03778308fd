package gable.threemf;

import jakarta.xml.bind.annotation.XmlAccessType;
import jakarta.xml.bind.annotation.XmlAccessorType;
import jakarta.xml.bind.annotation.XmlAttribute;
import jakarta.xml.bind.annotation.XmlElement;
import jakarta.xml.bind.annotation.XmlRootElement;
import jakarta.xml.bind.annotation.XmlValue;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The skeleton of a model part as JAXB binds it: all attributes as text, since what they may hold
 * is judged later and with a message of ours. {@code number} is the element's number in {@link
 * Elements}, added by {@link SkeletonStream}; lists of vertices, triangles and property values are
 * not here but under that number.
 */
@XmlRootElement(name = "model")
@XmlAccessorType(XmlAccessType.FIELD)
final class ModelXml {
  @XmlAttribute @Nullable String unit;
  @XmlAttribute @Nullable String requiredextensions;
  @XmlAttribute @Nullable String recommendedextensions;

  @XmlElement final List<MetadataXml> metadata = new ArrayList<>();
  @XmlElement final List<ResourcesXml> resources = new ArrayList<>();
  @XmlElement final List<BuildXml> build = new ArrayList<>();

  /** Metadata of the model. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class MetadataXml {
    @XmlAttribute @Nullable String name;
    @XmlValue @Nullable String value;
  }

  /** Resources. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class ResourcesXml {
    @XmlElement final List<ObjectXml> object = new ArrayList<>();
    @XmlElement final List<GroupXml> basematerials = new ArrayList<>();

    @XmlElement(namespace = Names.MATERIAL)
    final List<GroupXml> colorgroup = new ArrayList<>();

    @XmlElement(namespace = Names.MATERIAL)
    final List<GroupXml> texture2dgroup = new ArrayList<>();

    @XmlElement(namespace = Names.MATERIAL)
    final List<GroupXml> compositematerials = new ArrayList<>();

    @XmlElement(namespace = Names.MATERIAL)
    final List<GroupXml> multiproperties = new ArrayList<>();

    @XmlElement(namespace = Names.MATERIAL)
    final List<ResourceXml> texture2d = new ArrayList<>();
  }

  /** A resource of which only the identity matters. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class ResourceXml {
    @XmlAttribute @Nullable String id;
  }

  /** A group of properties. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class GroupXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;

    @XmlAttribute @Nullable String id;
    @XmlAttribute @Nullable String texid;
    @XmlAttribute @Nullable String matid;
    @XmlAttribute @Nullable String matindices;
    @XmlAttribute @Nullable String pids;
    @XmlAttribute @Nullable String blendmethods;
  }

  /** An object. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class ObjectXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;

    @XmlAttribute @Nullable String id;
    @XmlAttribute @Nullable String type;
    @XmlAttribute @Nullable String name;
    @XmlAttribute @Nullable String pid;
    @XmlAttribute @Nullable String pindex;

    @XmlAttribute(name = "UUID", namespace = Names.PRODUCTION)
    @Nullable String uuid;

    @XmlAttribute(namespace = Names.SLICE)
    @Nullable String slicestackid;

    @XmlAttribute(namespace = Names.SLICE)
    @Nullable String meshresolution;

    @XmlElement final List<MeshXml> mesh = new ArrayList<>();
    @XmlElement final List<ComponentsXml> components = new ArrayList<>();
  }

  /** A mesh. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class MeshXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;

    @XmlElement final List<ListXml> vertices = new ArrayList<>();
    @XmlElement final List<ListXml> triangles = new ArrayList<>();

    @XmlElement(namespace = Names.SETS)
    final List<SetsXml> trianglesets = new ArrayList<>();
  }

  /** A list whose content is under its number. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class ListXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;
  }

  /** Triangle sets. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class SetsXml {
    @XmlElement(namespace = Names.SETS)
    final List<SetXml> triangleset = new ArrayList<>();
  }

  /** A triangle set. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class SetXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;

    @XmlAttribute @Nullable String name;
    @XmlAttribute @Nullable String identifier;
  }

  /** Components. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class ComponentsXml {
    @XmlElement final List<UseXml> component = new ArrayList<>();
  }

  /** Build. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class BuildXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;

    @XmlElement final List<UseXml> item = new ArrayList<>();

    @XmlAttribute(name = "UUID", namespace = Names.PRODUCTION)
    @Nullable String uuid;
  }

  /** A component or a build item. */
  @XmlAccessorType(XmlAccessType.FIELD)
  static final class UseXml {
    @XmlAttribute(namespace = Names.NUMBERS)
    int number;

    @XmlAttribute @Nullable String objectid;
    @XmlAttribute @Nullable String transform;

    @XmlAttribute(namespace = Names.PRODUCTION)
    @Nullable String path;

    @XmlAttribute(name = "UUID", namespace = Names.PRODUCTION)
    @Nullable String uuid;
  }
}
