/// <reference types="office-js" />
/// <reference types="custom-functions-runtime" />
