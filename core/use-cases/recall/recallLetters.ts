import type { Handler } from '../../contract/operation.ts';
import type { recallLetters } from '../../contract/recall.ts';
import { emailText } from '../../papers/letters/emailText.ts';
import { letterFacts } from '../../papers/letters/letterFacts.ts';
import { phoneScript } from '../../papers/letters/phoneScript.ts';
import { shortMessage } from '../../papers/letters/shortMessage.ts';
import { spokenAnswer } from '../../papers/letters/spokenAnswer.ts';
import { customerOfMachine } from '../../record/customerStore.ts';
import { type Context, recordOf } from '../context.ts';
import { shopAround } from '../shopNow.ts';
import { slipOfMachine } from '../slipOfMachine.ts';

/** Words from the facts of the slip as it would be printed now: the slip, the mail and the voice say the same. */
export const recallLettersHandler: Handler<typeof recallLetters, Context> = (context, { machineId }) => {
  const record = recordOf(context);
  const facts = letterFacts(slipOfMachine(record, shopAround(context, machineId), machineId, context.today()));
  const customer = customerOfMachine(record, machineId, context.today());
  const known = customer?.erased ? null : customer;
  return {
    machineId,
    machine: facts.slip.machine.name,
    customerId: known?.id ?? null,
    name: known?.name ?? '',
    phone: known?.phone ?? '',
    spoken: spokenAnswer(facts),
    email: emailText(facts, known?.email ?? ''),
    message: shortMessage(facts),
    script: phoneScript(facts),
  };
};
