/** A text that uses most of the language, for tests of reading and formatting. */
export const example = `import "../catalogue/controls.pair"

cable ShieldedPair22 "22 AWG shielded pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 12.5 pF/ft
  velocity 66 %
  // resistance 52.5 ohm/km      one conductor at 20 degC; derived from the gauge when it is not given
}

device CaseBoard "Case controller" {
  revision A, B
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    speaks modbus-rtu, bacnet-mstp
    polarity required
    load 1/8
    terminator switch 120 ohm
    address dial 1..99
  }
  port aux : can { reserved in A, B "not enabled on these revisions" }
  port bench : ethernet { twin of net "for bench set-up only" }
  port net : ethernet
  port loop : contact-loop {
    expects resistor 4.7 kohm
    at most 3 contacts
    at most 100 ohm of cable
    reads fault below 2.5 kohm
    reads normal above 3.6 kohm below 6.2 kohm
  }
  port relay : contact-loop { normally open }
  port power : supply { draws 6 W dc above 19 V below 30 V }
  port out : supply { supplies 24 V ac within 10 % limit 40 VA class 2 }
  indicator poll "blinks green each time the head polls it"
  mark "yellow label under the lid: revision B"
}
store northgate "Northgate Market" {
  node head : SiteHead revision B
  node comp1 : DriveBoard
  node probe1 : AirProbe

  bus chillers "Medium-temperature cases" : modbus-rtu 19200 8E1 on ShieldedPair22 {
    from head.field2 terminate switch
    38 ft to comp1 address 11
    22 ft to caseA1 : CaseBoard address 12
    tap 2 ft to probe1 address 21
    12 ft 6 in to "Käse 1" : CaseBoard address 14 terminate resistor 120 ohm
    shield earthed at head
    bias at head 560 ohm to + 560 ohm to -
    colours + white - white-blue shield drain
    ambient -20 degC
  }
  bus doors : contact-loop on ShieldedPair22 {
    from comp1.loop
    20 ft fuse 1.5 A to caseA1.relay across through 2.2 kohm
    3 m to "Käse 1".relay breaks - bridged 4.7 kohm terminate resistor 4.7 kohm
  }
  waive tap-too-long at probe1 because "9600 baud only, agreed in change 41"
}
`;
