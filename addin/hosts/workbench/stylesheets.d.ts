/** Style sheets are taken out of the scripts by the build. */
declare module '*.css';
