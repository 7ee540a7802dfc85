/** Runs webpack over one configuration; throws with webpack's own words where it fails. */
export const bundle = async (configuration) => {
  const { default: webpack } = await import('webpack');
  await new Promise((resolve, reject) => {
    webpack(configuration, (error, stats) => {
      if (error) reject(error);
      else if (stats.hasErrors())
        reject(new Error(stats.toString({ all: false, errors: true, errorDetails: true })));
      else resolve();
    });
  });
};
