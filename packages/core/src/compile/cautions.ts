/** What every plan says, whatever the model. It defers to those who make the rules; nothing here certifies anything. */
export const cautions: readonly string[] = [
  "This plan is arithmetic made from bench measurements. It approves nothing and replaces no inspection.",
  "Make the motor safe first: propeller off or motor lead out, fuel off, model held.",
  "Enter a new plan with the linkages off, and read each pulse back at the servo lead before one is connected. A change goes in with them on only where its order of entry says so.",
  "At unexpected movement, buzzing or high current pull the receiver's supply at once.",
  "The values hold only for the servos, linkages, receiver and radio that were measured. After any change measure again.",
  "The rules of the national aviation authority, of the club and of the makers of model, servos and radio come first; where they differ from this plan, they hold.",
  "The pilot decides whether the model is fit to fly.",
];
