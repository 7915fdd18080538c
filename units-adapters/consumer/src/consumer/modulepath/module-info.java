/** What a module needs that uses Stoplag: its two jars have names, but no descriptors that could ask for the rest. */
module consumer {
    requires io.github.stoplag.core;
    requires io.github.stoplag.units;
    // with core
    requires org.apache.commons.statistics.distribution;
    // with the units adapters
    requires tech.units.indriya;
    requires si.uom.quantity;
}
