package io.github.stoplag.lamp;

/**
 * The wire of a filament as its rating fixes it, and what it does at a temperature; the equations stand in {@link
 * FilamentLamp}.
 */
final class FilamentWire {
    /** End of the tungsten tables in kelvin; a filament driven beyond it is about to melt. */
    static final double HIGHEST_K = 3600;

    static final double DESIGN_AMBIENT_K = 300;
    private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    private final TungstenTables tungsten;
    private final double filamentK;
    private final double gasLossShare;
    private final double coilFactor;
    private final double lightLossShare;
    private final double ratedOhm;
    private final double ratedW;
    private final double ohmPerOhmM;
    private final double radiatingAreaM2;
    private final double gasLossWPerK;
    private final double diameterM;
    private final double lengthM;
    private final double massKg;

    FilamentWire(
            TungstenTables tungsten,
            double ratedV,
            double ratedW,
            double filamentK,
            double gasLossShare,
            double coilFactor,
            double lightLossShare) {
        this.tungsten = tungsten;
        this.filamentK = filamentK;
        this.lightLossShare = lightLossShare;
        this.gasLossShare = gasLossShare;
        this.coilFactor = coilFactor;
        this.ratedW = ratedW;
        ratedOhm = ratedV * ratedV / ratedW;
        double hotResistivityOhmM = tungsten.resistivityOhmM(filamentK);
        ohmPerOhmM = ratedOhm / hotResistivityOhmM;
        radiatingAreaM2 = ratedW * (1 - gasLossShare) / exitanceWPerM2(filamentK, DESIGN_AMBIENT_K);
        gasLossWPerK = ratedW * gasLossShare / (filamentK - DESIGN_AMBIENT_K);
        double wireAreaM2 = radiatingAreaM2 / coilFactor;
        diameterM = Math.cbrt(4 * hotResistivityOhmM * wireAreaM2 / (Math.PI * Math.PI * ratedOhm));
        lengthM = wireAreaM2 / (Math.PI * diameterM);
        massKg = Tungsten.densityKgPerM3(filamentK) * wireAreaM2 * diameterM / 4;
    }

    TungstenTables tungsten() {
        return tungsten;
    }

    double filamentK() {
        return filamentK;
    }

    double gasLossShare() {
        return gasLossShare;
    }

    double coilFactor() {
        return coilFactor;
    }

    double lightLossShare() {
        return lightLossShare;
    }

    double ratedW() {
        return ratedW;
    }

    double ratedOhm() {
        return ratedOhm;
    }

    double diameterM() {
        return diameterM;
    }

    double lengthM() {
        return lengthM;
    }

    double massKg() {
        return massKg;
    }

    double predictedLm() {
        return (1 - lightLossShare)
                * Math.PI
                * radiatingAreaM2
                * Math.exp(Photometry.tungsten(Lens.CLEAR).logLuminance(filamentK));
    }

    double lossW(double temperatureK, double ambientK) {
        return radiatingAreaM2 * exitanceWPerM2(temperatureK, ambientK) + gasLossWPerK * (temperatureK - ambientK);
    }

    double resistanceOhm(double temperatureK) {
        return ohmPerOhmM * tungsten.resistivityOhmM(temperatureK);
    }

    double heatCapacityJPerK(double temperatureK) {
        return massKg * tungsten.specificHeatJPerKgK(temperatureK);
    }

    private double exitanceWPerM2(double temperatureK, double ambientK) {
        return tungsten.totalEmissivityRatio(temperatureK)
                * STEFAN_BOLTZMANN
                * (fourth(temperatureK) - fourth(ambientK));
    }

    private static double fourth(double x) {
        double square = x * x;
        return square * square;
    }
}
