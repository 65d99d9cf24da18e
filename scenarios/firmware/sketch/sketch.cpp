/* A program on the usual hobby core: blinks, prints, stores a byte, reads an analog input, and answers what it is sent. */
#include <Arduino.h>
#include <EEPROM.h>
#include <Wire.h>

void setup()
{
    pinMode(13, OUTPUT);
    Serial.begin(115200);
    EEPROM.update(3, 42);
    Serial.print("stored ");
    Serial.println(EEPROM.read(3));
    Serial.print("analog ");
    Serial.println(analogRead(2));
    Serial.print("root ");
    Serial.println(sqrt(2.0), 6);
    Wire.begin();
    Wire.beginTransmission(0x3C);
    Serial.print("display ");
    Serial.println(Wire.endTransmission());
}

void loop()
{
    digitalWrite(13, HIGH);
    delay(100);
    digitalWrite(13, LOW);
    delay(150);
    while (Serial.available() > 0) {
        Serial.write(toupper(Serial.read()));
    }
}
