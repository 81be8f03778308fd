/**
 * The model part of a 3MF package: read into arrays, written by splicing.
 *
 * <p>Reading. The bytes of a part are kept as they are. One pass over them ({@code PartScan}) finds
 * the content of every vertex and triangle list and parses it straight into arrays; what is left,
 * the skeleton, goes through a StAX reader into JAXB. The element that StAX sees as its k-th of the
 * tracked names is the k-th of those names in byte order, so that StAX alone decides about
 * namespaces and well-formedness, and the byte pass alone about places.
 *
 * <p>Writing. Outside of a named list of spans the bytes are copied: vertex and triangle lists,
 * triangle sets, appended property entries, UUIDs, cloned objects and the references to them.
 */
@NullMarked
@XmlSchema(namespace = Names.CORE, elementFormDefault = XmlNsForm.QUALIFIED)
package gable.threemf;

import jakarta.xml.bind.annotation.XmlNsForm;
import jakarta.xml.bind.annotation.XmlSchema;
import org.jspecify.annotations.NullMarked;
