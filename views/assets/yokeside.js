// The few lines of browser script.
