/**
 * Share of its absolute pressure by which saturated suction changes for 1 K, where the refrigerant is not known: near
 * −10 °C 3.2 to 3.9 % for the refrigerants in the tables here (CoolProp).
 */
export const pressurePerKelvin = 0.035;
