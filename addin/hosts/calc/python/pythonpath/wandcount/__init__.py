"""The Calc side of Wandcount: carries values between LibreOffice and the engine."""
