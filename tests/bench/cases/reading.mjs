/** Reading a scenario: what stands between a dropped file and the first run. */
export default ({ core, measure, scenarioText }) => {
  const { file, text } = scenarioText('hedgelark');
  return [
    {
      name: 'demo scenario',
      bytes: text.length,
      ...measure(() => core.readScenario(text, { file })),
    },
  ];
};
