import { defineConfig } from 'drizzle-kit';

/** For `npx drizzle-kit generate --config core/record/drizzle.config.ts --name what_changed` (see migrations/README.md). */
export default defineConfig({ dialect: 'sqlite', schema: './core/record/schema.ts', out: './migrations' });
