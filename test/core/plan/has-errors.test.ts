import type { Finding, Severity } from "@hingeline/core";
import { expect, test } from "vitest";
import { hasErrors } from "../../../packages/core/src/plan/has-errors.ts";

const finding = (severity: Severity): Finding => ({
  code: "limit-passed",
  severity,
  at: "",
  message: "",
  do: "",
  numbers: {},
});

test("hasErrors is true where one finding is an error, whatever stands around it", () => {
  expect(hasErrors({ findings: [] })).toBe(false);
  expect(hasErrors({ findings: [finding("note"), finding("warning")] })).toBe(false);
  expect(hasErrors({ findings: [finding("note"), finding("error"), finding("warning")] })).toBe(true);
});
